package easewright.guard;

import easewright.saying.Problem;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.json.Json;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;

/**
 * Answers requests that the server itself finds malformed before any filter sees them, such as one
 * with an invalid "Host" header. Otherwise the framework would answer and reveal its class names.
 */
@Singleton
class MalformedRequests {
  /** Only for requests without a declared length; other code that limits size states the limit. */
  private static final Problem TOO_LARGE =
      Problem.of(
          "too-large",
          "The request is too large",
          413,
          "Send less at once; the contract says how much.");

  void register(@Observes Router router) {
    router.route().order(Integer.MIN_VALUE).failureHandler(MalformedRequests::refuse);
  }

  private static void refuse(RoutingContext call) {
    int status = call.statusCode();
    if (status < 400 || status >= 500 || call.response().headWritten()) {
      call.next();
      return;
    }
    Problem problem = status == 413 ? TOO_LARGE : refused(status);
    call.response()
        .setStatusCode(status)
        .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
        .putHeader(HttpHeaders.CACHE_CONTROL, "no-store")
        .putHeader(HttpHeaders.CONNECTION, "close")
        .end(Json.encodeToBuffer(problem))
        // The header alone does not stop the server from reading on.
        .onComplete(sent -> call.request().connection().close());
  }

  private static Problem refused(int status) {
    return Problem.of(
        "refused",
        "The request is refused",
        status,
        "It breaks a rule of HTTP; look at its headers and its address.");
  }
}
