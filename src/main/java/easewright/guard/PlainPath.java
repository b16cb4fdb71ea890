package easewright.guard;

import io.vertx.ext.web.RoutingContext;

/** The path that decides which resource answers a call. */
final class PlainPath {
  private PlainPath() {}

  /**
   * Removes path-segment parameters (RFC 3986, section 3.3), which routing to resources ignores.
   */
  static String of(RoutingContext call) {
    return call.normalizedPath().replaceAll(";[^/]*+", "");
  }
}
