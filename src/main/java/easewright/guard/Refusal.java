package easewright.guard;

import easewright.saying.Problem;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.core.json.Json;
import io.vertx.ext.web.RoutingContext;

/** A problem (RFC 9457) written once and said often, before the request was read. */
final class Refusal {
  /** What is still to come of a request this small is read and dropped, so the connection stays. */
  private static final int WORTH_DROPPING = 64 * 1024;

  private final int status;
  private final Buffer problem;

  Refusal(Problem problem) {
    this.status = problem.status();
    this.problem = Json.encodeToBuffer(problem);
  }

  /** Refuses a call that may come again. */
  void answer(RoutingContext call, long retryAfterSeconds) {
    call.response().putHeader(HttpHeaders.RETRY_AFTER, Long.toString(retryAfterSeconds));
    answer(call);
  }

  /** Refuses a call. */
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
