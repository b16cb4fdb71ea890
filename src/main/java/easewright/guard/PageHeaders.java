package easewright.guard;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.MultiMap;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;

/**
 * Sets the security headers of responses (Content Security Policy Level 3; Fetch Standard,
 * "X-Content-Type-Options"; Permissions Policy). Pages load nothing from other sites and cannot be
 * framed; other responses run nothing even when opened as a page. Headers that a page sets itself
 * are kept.
 */
@Singleton
class PageHeaders {
  /** Before all other filters, since rejections are responses too. */
  private static final int PRIORITY = 310;

  private static final String CSP = "Content-Security-Policy";
  private static final String NOTHING = "default-src 'none'; frame-ancestors 'none'";

  /** A single page has inline styles so that it can be saved, but never inline scripts. */
  private static final String PAGE =
      "default-src 'none'; style-src 'unsafe-inline'; script-src 'self'; img-src 'self' data:;"
          + " form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  private static final String DRAWING =
      "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'";

  void register(@Observes Filters filters) {
    filters.register(
        call -> {
          call.addHeadersEndHandler(sent -> complete(call));
          call.next();
        },
        PRIORITY);
  }

  private static void complete(RoutingContext call) {
    MultiMap headers = call.response().headers();
    headers.set("X-Content-Type-Options", "nosniff");
    if (!headers.contains("Referrer-Policy")) {
      headers.set("Referrer-Policy", "no-referrer");
    }
    String form = withoutPreference(headers);
    boolean page = form != null && form.startsWith("text/html");
    if (!headers.contains(CSP)) {
      headers.set(CSP, policy(form, page));
    }
    if (page) {
      headers.set("Cross-Origin-Opener-Policy", "same-origin");
      headers.set(
          "Permissions-Policy", "camera=(), geolocation=(), microphone=(), payment=(), usb=()");
    }
  }

  /** The media type of the response, without its quality parameter. */
  private static String withoutPreference(MultiMap headers) {
    String form = headers.get(HttpHeaders.CONTENT_TYPE);
    if (form == null || !form.contains("qs=")) {
      return form;
    }
    String bare = form.replaceAll(";\\s*+qs=[0-9.]++", "");
    headers.set(HttpHeaders.CONTENT_TYPE, bare);
    return bare;
  }

  private static String policy(String form, boolean page) {
    if (page) {
      return PAGE;
    }
    return form != null && form.startsWith("image/svg") ? DRAWING : NOTHING;
  }
}
