package easewright.guard;

import io.vertx.core.Handler;
import io.vertx.ext.web.RoutingContext;

/**
 * A filter that sees each call once. The router passes a call through every filter anew when a
 * route sends it on to another, which must neither take a second place nor count twice.
 *
 * @param name what it is done for, each filter's own
 */
record OncePerCall(String name, Handler<RoutingContext> filter) implements Handler<RoutingContext> {
  @Override
  public void handle(RoutingContext call) {
    // Unlike the headers of the answer, these data outlast a call's being sent on.
    if (call.data().putIfAbsent("seen for " + name, true) == null) {
      filter.handle(call);
    } else {
      call.next();
    }
  }
}
