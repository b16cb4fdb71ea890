package easewright.access;

import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Singleton;

/**
 * Tells whether a browser's request comes from a page of this service. A browser states this in
 * {@code Sec-Fetch-Site} (Fetch Metadata Request Headers, W3C Working Draft), but to a site without
 * TLS only in {@code Origin}. That is "null" for a frame without its own origin, and never for our
 * forms, whose pages send a referrer to our own site (Fetch Standard, "append a request Origin
 * header": with the referrer policy "no-referrer" it would be "null" as well).
 */
@Singleton
public class OwnPages {
  private final PublicAddress address;

  OwnPages(PublicAddress address) {
    this.address = address;
  }

  /** Whether the call comes from one of our pages, or not from a browser. */
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
