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
 * Refuses a "Content-Type" that is no media type (RFC 9110, section 8.3.1). The framework takes it
 * for a failure of ours, and logs what the header said.
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
   * By the framework's own reading, which keeps what it has read before, and on some of what is
   * none fails in other ways than it says.
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
