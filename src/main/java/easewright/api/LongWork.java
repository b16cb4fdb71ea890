package easewright.api;

import io.vertx.ext.web.RoutingContext;

/** The places for what lasts long, for calls that only their body tells to be of that kind. */
public interface LongWork {
  /** Takes one for a call until it ends, once; false when none is free. */
  boolean takesLong(RoutingContext call);
}
