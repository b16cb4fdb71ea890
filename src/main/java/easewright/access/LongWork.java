package easewright.access;

import io.vertx.ext.web.RoutingContext;

/** Slots for long requests, for calls whose path does not show that they are long. */
public interface LongWork {
  /**
   * Takes such a slot for a call, until the call ends.
   *
   * @return whether one was free; otherwise the call is to be rejected
   */
  boolean takesSlot(RoutingContext call);
}
