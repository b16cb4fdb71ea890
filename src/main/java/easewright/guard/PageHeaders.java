package easewright.guard;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.MultiMap;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;

/**
 * What a browser may do with an answer (Content Security Policy Level 3; Fetch Standard,
 * "X-Content-Type-Options"; Permissions Policy). Pages load nothing from elsewhere and are shown in
 * no other; what is no page runs nothing even if it is opened as one. Pages that say otherwise
 * themselves keep their word.
 */
@Singleton
class PageHeaders {
  /** Before all others, since refusals are answers too. */
  private static final int PRIORITY = 310;

  private static final String CSP = "Content-Security-Policy";
  private static final String NOTHING = "default-src 'none'; frame-ancestors 'none'";

  /** A single page carries its style within, so that it can be kept; its script it never does. */
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

  /** The form of the answer; that it is the second choice of several is nobody's business. */
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
