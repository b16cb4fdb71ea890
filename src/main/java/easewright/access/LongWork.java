package easewright.access;

import io.vertx.ext.web.RoutingContext;

/** Slots for long work, for calls whose path does not show that they need one. */
public interface LongWork {
  /**
   * Takes such a slot for a call until the call ends.
   *
   * @return whether one was free; otherwise the call must be rejected
   */
  boolean takesPlace(RoutingContext call);
}
