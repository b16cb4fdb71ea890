package easewright.guard;

import io.vertx.ext.web.RoutingContext;

/** The path that decides which resource answers a call. */
final class PlainPath {
  private PlainPath() {}

  /** Without the parameters of its segments (RFC 3986, section 3.3), which resources pass over. */
  static String of(RoutingContext call) {
    return call.normalizedPath().replaceAll(";[^/]*+", "");
  }
}
