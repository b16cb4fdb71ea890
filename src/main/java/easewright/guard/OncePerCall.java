package easewright.guard;

import io.vertx.core.Handler;
import io.vertx.ext.web.RoutingContext;

/**
 * A filter that sees each call once. When a route reroutes a call, the router passes it through
 * every filter again; it must neither take a second slot nor be counted twice.
 *
 * @param name unique name of the filter
 */
record OncePerCall(String name, Handler<RoutingContext> filter) implements Handler<RoutingContext> {
  @Override
  public void handle(RoutingContext call) {
    // Unlike response headers, this data survives rerouting.
    if (call.data().putIfAbsent("seen for " + name, true) == null) {
      filter.handle(call);
    } else {
      call.next();
    }
  }
}
