package easewright.guard;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.MultiMap;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Decides which responses are compressed (RFC 9110, section 8.4.1; the server does it). The length
 * of a compressed response tells a listener which parts of it are alike. So nothing is compressed
 * that may hold a secret beside words of the request (BREACH, Gluck, Harris and Prado 2013, from
 * memory): no request with a cookie or a key, and only addresses that are listed here, none of
 * which belongs to a clinic.
 */
@Singleton
class Compression {
  /** Outside all other filters except {@link PageHeaders}, so that it decides last. */
  private static final int PRIORITY = 309;

  /** Shorter responses fit into one packet anyway. */
  private static final int LEAST_BYTES = 1024;

  private static final int OK = 200;
  private static final String VARY = "Vary";

  private static final Set<String> PATHS =
      Set.of(
          "/v1/fittings",
          "/v1/intakes",
          "/v1/size-checks",
          "/v1/cloth-checks",
          "/v1/cut-plans",
          "/v1/signs",
          "/v1/pattern-sheets",
          "/v1/pattern-sheet.schema.json",
          "/api",
          "/rules",
          "/openapi.yaml",
          "/openapi.json",
          "/openapi-3.0.yaml",
          "/openapi-3.0.json",
          "/openapi-3.0",
          "/desk",
          "/desk/look.css",
          "/desk/desk.js");

  private static final List<String> BELOW =
      List.of("/v1/pattern-sheets/", "/v1/check-sheets/", "/rules/", "/drawings/", "/examples/");

  private static final List<String> TEXTS =
      List.of("text/", "application/json", "application/yaml", "application/schema", "image/svg");

  void register(@Observes Filters filters) {
    filters.register(
        call -> {
          call.addHeadersEndHandler(sent -> decide(call));
          call.next();
        },
        PRIORITY);
  }

  private static void decide(RoutingContext call) {
    MultiMap headers = call.response().headers();
    boolean may =
        isOpen(call.request()) && isText(headers) && call.response().getStatusCode() == OK;
    if (may) {
      headers.add(VARY, HttpHeaders.ACCEPT_ENCODING);
    }
    if (may && isLong(headers)) {
      headers.remove(HttpHeaders.CONTENT_ENCODING);
    } else if (call.request().headers().contains(HttpHeaders.ACCEPT_ENCODING)) {
      headers.set(HttpHeaders.CONTENT_ENCODING, HttpHeaders.IDENTITY);
    }
  }

  private static boolean isOpen(HttpServerRequest request) {
    String path = request.path();
    boolean secret =
        Stream.of(HttpHeaders.COOKIE, HttpHeaders.AUTHORIZATION)
            .anyMatch(request.headers()::contains);
    return !secret
        && path != null
        && (PATHS.contains(path) || BELOW.stream().anyMatch(path::startsWith));
  }

  private static boolean isText(MultiMap headers) {
    String form = headers.get(HttpHeaders.CONTENT_TYPE);
    return form != null
        && TEXTS.stream().anyMatch(form::startsWith)
        && !headers.contains(HttpHeaders.SET_COOKIE);
  }

  /** A response sent in several parts has no length beforehand, and is longer than one part. */
  private static boolean isLong(MultiMap headers) {
    String length = headers.get(HttpHeaders.CONTENT_LENGTH);
    return length == null || Long.parseLong(length) >= LEAST_BYTES;
  }
}
