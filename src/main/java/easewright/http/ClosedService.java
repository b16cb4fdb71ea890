package easewright.http;

import easewright.access.ClinicDoor;
import easewright.clinic.StoreAway;
import easewright.deadline.DeadlinePassed;
import easewright.saying.Problem;
import io.quarkus.logging.Log;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.Cookie;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.json.Json;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Restricts the service to key holders if {@code easewright.open=false}: any path not listed here
 * requires a clinic's key. Link targets of replies and the contract stay public; clinics and
 * wearers' links check keys themselves. At the desk the key comes in a cookie, and callers without
 * one get the sign-in page.
 */
@Singleton
class ClosedService {
  /** After the CORS filter (300), before anything is read. */
  private static final int PRIORITY = 240;

  private static final List<String> OPEN =
      List.of(
          "/",
          "/v1/clinics",
          "/v1/wearer-links",
          "/desk/clinics",
          "/desk/wearer",
          "/desk/feed",
          "/desk/shared",
          "/desk/sign-in",
          "/desk/sign-out",
          "/desk/look.css",
          "/desk/desk.js",
          "/rules",
          "/drawings",
          "/problems",
          "/examples",
          "/api",
          "/openapi.yaml",
          "/openapi.json",
          "/openapi-3.0",
          "/openapi-3.0.json",
          "/openapi-3.0.yaml");

  private final boolean open;
  private final ClinicDoor door;

  ClosedService(@ConfigProperty(name = "easewright.open") boolean open, ClinicDoor door) {
    this.open = open;
    this.door = door;
  }

  void register(@Observes Filters filters) {
    if (!open) {
      filters.register(this::check, PRIORITY);
    }
  }

  private void check(RoutingContext call) {
    String path = call.normalizedPath();
    if (OPEN.stream().anyMatch(one -> path.equals(one) || path.startsWith(one + "/"))) {
      call.next();
      return;
    }
    String authorization = authorization(call, path);
    call.request().pause(); // the body must not arrive before a reader is attached
    call.vertx()
        .executeBlocking(() -> door.find(authorization), false)
        .onComplete(
            found -> {
              call.request().resume();
              if (found.failed()) {
                fail(call, found.cause());
              } else if (found.result().isPresent()) {
                call.next();
              } else if (isOfDesk(path) && call.request().method().equals(HttpMethod.GET)) {
                call.redirect("/desk/sign-in");
              } else {
                refuse(call);
              }
            });
  }

  private static boolean isOfDesk(String path) {
    return path.equals("/desk") || path.startsWith("/desk/");
  }

  private static String authorization(RoutingContext call, String path) {
    String header = call.request().getHeader(HttpHeaders.AUTHORIZATION);
    Cookie cookie = isOfDesk(path) ? call.request().getCookie(ClinicDoor.COOKIE) : null;
    return header == null && cookie != null ? ClinicDoor.bringing(cookie.getValue()) : header;
  }

  private static void refuse(RoutingContext call) {
    call.response().putHeader("WWW-Authenticate", "Bearer");
    answer(call, ProblemMapping.KEY_NEEDED);
  }

  /** Failures in this filter do not reach {@link ProblemMapping}. */
  private static void fail(RoutingContext call, Throwable failure) {
    if (failure instanceof DeadlinePassed || failure instanceof StoreAway) {
      call.response().putHeader(HttpHeaders.RETRY_AFTER, "" + ProblemMapping.RETRY_AFTER_SECONDS);
      answer(call, Problem.of((RuntimeException) failure));
    } else {
      Log.error("A key could not be looked for", failure);
      answer(call, Problem.failed());
    }
  }

  private static void answer(RoutingContext call, Problem problem) {
    call.response()
        .setStatusCode(problem.status())
        .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
        .putHeader(HttpHeaders.CACHE_CONTROL, "no-store")
        .putHeader(HttpHeaders.CONNECTION, "close")
        .end(Json.encode(problem));
  }
}
