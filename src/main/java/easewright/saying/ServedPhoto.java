package easewright.saying;

import java.util.Map;

/** How a photo is sent: as a picture and nothing else, and kept by no cache. */
public final class ServedPhoto {
  /** Its media type. */
  public static final String FORM = "image/jpeg";

  /** Its headers (RFC 6266; Content Security Policy Level 3; Fetch Standard). */
  public static final Map<String, String> HEADERS =
      Map.of(
          "Content-Disposition",
          "inline; filename=\"photo.jpg\"",
          "Content-Security-Policy",
          "default-src 'none'; sandbox; frame-ancestors 'none'",
          "X-Content-Type-Options",
          "nosniff",
          "Cross-Origin-Resource-Policy",
          "same-origin",
          "Cache-Control",
          "no-store");

  private ServedPhoto() {}
}
