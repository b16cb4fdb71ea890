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
 * Rejects cross-site requests unless they only compute an answer: otherwise any page could perform
 * keyless operations on a visitor's behalf. Origins allowed by the cross-origin (CORS) settings may
 * request everything. The desk rejects such requests itself, with a page; the assistants' endpoint
 * has its own check.
 */
@Singleton
class ForeignSiteFilter {
  /** After the CORS filter (300) and {@link RequestSlots}, before anything is counted. */
  private static final int PRIORITY = 285;

  private static final Set<HttpMethod> SAFE =
      Set.of(HttpMethod.GET, HttpMethod.HEAD, HttpMethod.OPTIONS);

  /**
   * Paths that change nothing, whoever calls; any path not listed is assumed to change something.
   */
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
