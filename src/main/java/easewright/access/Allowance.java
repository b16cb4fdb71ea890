package easewright.access;

import io.vertx.ext.web.RoutingContext;

/** What is counted only where the request is read: how often one place may do it. */
public interface Allowance {
  /**
   * Counts a key that opens nothing, once a call.
   *
   * @throws TooOften when too many came from there
   */
  void countWrongKey(RoutingContext call);

  /** Counts a line of a request; false when there were too many. */
  boolean takesLine(RoutingContext call);
}
