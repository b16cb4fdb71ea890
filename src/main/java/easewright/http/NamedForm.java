package easewright.http;

import easewright.contract.Contract;
import easewright.saying.Problem;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.json.Json;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import jakarta.ws.rs.core.MediaType;
import java.nio.charset.Charset;
import java.util.List;

/**
 * Rejects a malformed "Content-Type" (RFC 9110, section 8.3.1). The framework would treat it as a
 * server error and log the header's value.
 */
@Singleton
class NamedForm {
  /** After quotas (280), before anything is read. */
  private static final int PRIORITY = 270;

  void register(@Observes Filters filters) {
    filters.register(NamedForm::check, PRIORITY);
  }

  private static void check(RoutingContext call) {
    String form = call.request().getHeader(HttpHeaders.CONTENT_TYPE);
    if (form == null || isMediaType(form)) {
      call.next();
      return;
    }
    List<String> taken = Contract.forms(call.normalizedPath());
    Problem problem = ProblemMapping.notSupported(taken);
    call.response()
        .setStatusCode(problem.status())
        .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
        .putHeader(HttpHeaders.ACCEPT, String.join(", ", taken))
        .putHeader(HttpHeaders.CACHE_CONTROL, "no-store")
        .putHeader(HttpHeaders.CONNECTION, "close")
        .end(Json.encodeToBuffer(problem));
  }

  /**
   * Uses the framework's own parser, which caches its results, and which fails on some malformed
   * values with undocumented exceptions.
   */
  private static boolean isMediaType(String form) {
    try {
      String charset = MediaType.valueOf(form).getParameters().get(MediaType.CHARSET_PARAMETER);
      return charset == null || Charset.isSupported(charset);
    } catch (RuntimeException none) {
      return false;
    }
  }
}
