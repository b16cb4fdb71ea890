package easewright.access;

import io.vertx.ext.web.RoutingContext;

/**
 * Places for work that lasts long, for calls whose address does not show that they ask for some.
 */
public interface LongWork {
  /**
   * Takes such a place for a call, until the call is over.
   *
   * @return whether there was one; the call is to be refused otherwise
   */
  boolean takesPlace(RoutingContext call);
}
