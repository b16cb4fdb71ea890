package easewright.guard;

import io.quarkus.vertx.http.runtime.filters.QuarkusRequestWrapper;
import io.vertx.ext.web.RoutingContext;

/**
 * Reports the end of a call. Uses the hook by which the framework itself counts calls at shutdown,
 * since its body readers silently replace {@link RoutingContext#addEndHandler}.
 */
final class Ending {
  private Ending() {}

  /** Runs an action once the response is sent or the client has disconnected. */
  static void of(RoutingContext call, Runnable action) {
    QuarkusRequestWrapper.get(call.request()).addRequestDoneHandler(done -> action.run());
  }
}
