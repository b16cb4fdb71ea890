package easewright.access;

import io.vertx.ext.web.RoutingContext;

/** The places for what lasts long, for calls whose body alone shows that they are of that kind. */
public interface LongWork {
  /** Takes one for a call until it ends, once; false when none is free. */
  boolean takesLong(RoutingContext call);
}
