package easewright.guard;

import easewright.access.OwnPages;
import easewright.saying.Problem;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpMethod;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.Set;

/**
 * Refuses what a page of another site has a visitor's browser send, unless it only computes an
 * answer: what needs no key would else be done by any page on the visitor's behalf. Pages of an
 * origin that cross-origin answers are turned on for may ask for everything. The desk refuses by
 * itself, in words; assistants have a check of their own.
 */
@Singleton
class ForeignSiteFilter {
  /** After cross-origin answers (300) and {@link RequestSlots}, before anything is counted. */
  private static final int PRIORITY = 285;

  private static final Set<HttpMethod> SAFE =
      Set.of(HttpMethod.GET, HttpMethod.HEAD, HttpMethod.OPTIONS);

  /** What changes nothing, whoever asks; whatever is not listed is taken to change something. */
  private static final Set<String> ANSWERING =
      Set.of(
          "/v1/fittings",
          "/v1/fittings/checks",
          "/v1/intakes",
          "/v1/cut-plans",
          "/v1/size-checks",
          "/v1/cloth-checks",
          "/v1/pattern-sheets/checks");

  private final OwnPages ownPages;
  private final Refusal refusal =
      new Refusal(
          Problem.of(
              "refused",
              "The request is refused",
              403,
              "A page of another site may not ask for this. Its origin can be named in"
                  + " quarkus.http.cors.origins."));

  ForeignSiteFilter(OwnPages ownPages) {
    this.ownPages = ownPages;
  }

  void register(@Observes Filters filters) {
    filters.register(this::check, PRIORITY);
  }

  private void check(RoutingContext call) {
    String path = PlainPath.of(call);
    if (SAFE.contains(call.request().method())
        || ANSWERING.contains(path)
        || isOf("/desk", path)
        || isOf("/mcp", path)
        || call.response().headers().contains(HttpHeaders.ACCESS_CONTROL_ALLOW_ORIGIN)
        || ownPages.mayHaveSent(call.request())) {
      call.next();
    } else {
      refusal.answer(call);
    }
  }

  private static boolean isOf(String folder, String path) {
    return path.equals(folder) || path.startsWith(folder + "/");
  }
}
