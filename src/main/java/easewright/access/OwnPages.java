package easewright.access;

import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Singleton;

/**
 * Whether what a browser sends comes from a page of ours. A browser says so in {@code
 * Sec-Fetch-Site} (Fetch Metadata Request Headers, W3C Working Draft), but to a site without TLS
 * only in {@code Origin}. That is "null" for a frame without an origin of its own, and never for
 * our forms, whose pages tell our own site where they are (Fetch Standard, "append a request Origin
 * header": with the referrer policy "no-referrer" it would be "null" as well).
 */
@Singleton
public class OwnPages {
  private final PublicAddress address;

  OwnPages(PublicAddress address) {
    this.address = address;
  }

  /** Whether it does, or no browser sent it. */
  public boolean mayHaveSent(HttpServerRequest call) {
    String site = call.getHeader("Sec-Fetch-Site");
    return site == null
        ? call.headers().getAll(HttpHeaders.ORIGIN).stream().allMatch(one -> isOurs(one, call))
        : site.equals("same-origin");
  }

  private boolean isOurs(String origin, HttpServerRequest call) {
    return origin.endsWith("://" + call.authority()) || address.isAt(origin);
  }
}
