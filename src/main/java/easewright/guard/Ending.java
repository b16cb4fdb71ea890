package easewright.guard;

import io.quarkus.vertx.http.runtime.filters.QuarkusRequestWrapper;
import io.vertx.ext.web.RoutingContext;

/**
 * When a call is over. By what the framework itself counts calls with when it stops, since {@link
 * RoutingContext#addEndHandler} is silently replaced by its readers of bodies.
 */
final class Ending {
  private Ending() {}

  /** Does something once the answer was sent, or the asker has gone. */
  static void of(RoutingContext call, Runnable deed) {
    QuarkusRequestWrapper.get(call.request()).addRequestDoneHandler(done -> deed.run());
  }
}
