package easewright.guard;

import easewright.saying.Problem;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.core.json.Json;
import io.vertx.ext.web.RoutingContext;

/** A problem (RFC 9457) serialised once and sent often, before the request body is read. */
final class Refusal {
  /** The rest of a request this small is read and discarded, to keep the connection open. */
  private static final int WORTH_DROPPING = 64 * 1024;

  private final int status;
  private final Buffer problem;

  Refusal(Problem problem) {
    this.status = problem.status();
    this.problem = Json.encodeToBuffer(problem);
  }

  /** Rejects a call that may be retried. */
  void answer(RoutingContext call, long retryAfterSeconds) {
    call.response().putHeader(HttpHeaders.RETRY_AFTER, Long.toString(retryAfterSeconds));
    answer(call);
  }

  /** Rejects a call. */
  void answer(RoutingContext call) {
    HttpServerRequest request = call.request();
    HttpServerResponse response =
        call.response()
            .setStatusCode(status)
            .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
            .putHeader(HttpHeaders.CACHE_CONTROL, "no-store");
    if (!request.isEnded() && !smallBody(request)) {
      response.putHeader(HttpHeaders.CONNECTION, "close");
    }
    response.end(problem);
    request.resume();
  }

  private static boolean smallBody(HttpServerRequest request) {
    String length = request.getHeader(HttpHeaders.CONTENT_LENGTH);
    if (length == null) {
      return request.getHeader(HttpHeaders.TRANSFER_ENCODING) == null;
    }
    return length.length() < 6 && Integer.parseInt(length) <= WORTH_DROPPING;
  }
}
