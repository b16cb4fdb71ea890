package easewright.guard;

import easewright.saying.Problem;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.json.Json;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;

/**
 * What the server itself finds broken before any filter sees it, such as a header "Host" that is
 * none. Without this the framework answers, and names its classes.
 */
@Singleton
class MalformedRequests {
  /** Only of requests that do not say how long they are; who else bounds them names the bound. */
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
        // The header alone does not keep the server from reading on.
        .onComplete(told -> call.request().connection().close());
  }

  private static Problem refused(int status) {
    return Problem.of(
        "refused",
        "The request is refused",
        status,
        "It breaks a rule of HTTP; look at its headers and its address.");
  }
}
