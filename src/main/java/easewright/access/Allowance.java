package easewright.access;

import io.vertx.ext.web.RoutingContext;

/** Rate limits that can be applied only once the request has been read. */
public interface Allowance {
  /**
   * Counts an invalid key, once per call.
   *
   * @throws TooOften if the client has sent too many
   */
  void countWrongKey(RoutingContext call);

  /** Counts a line of a bulk request; false if there were too many. */
  boolean takesLine(RoutingContext call);
}
