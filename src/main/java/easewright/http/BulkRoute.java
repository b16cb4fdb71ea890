package easewright.http;

import easewright.access.Allowance;
import easewright.answering.LineAnswers;
import easewright.saying.BadParameter;
import easewright.saying.Detail;
import easewright.saying.Problem;
import io.quarkus.runtime.configuration.MemorySize;
import io.quarkus.vertx.http.runtime.RouteConstants;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Many fittings in one request, one per line (newline-delimited JSON). A separate route, ahead of
 * the body-size limit of all other requests, since such a request is never held as a whole.
 */
@Singleton
class BulkRoute {
  static final String FORM = "application/x-ndjson";
  private static final String PATH = "/v1/fittings";

  private final LineAnswers answers;
  private final long mostBytes;
  private final Problem tooLarge;
  private final Allowance allowance;

  BulkRoute(
      LineAnswers answers,
      Allowance allowance,
      @ConfigProperty(name = "easewright.bulk.max-body-size") MemorySize most) {
    this.answers = answers;
    this.allowance = allowance;
    this.mostBytes = most.asLongValue();
    this.tooLarge = Problem.tooLarge(mostBytes / 1024 + " KB in one request");
  }

  void install(@Observes Router router) {
    int early = RouteConstants.ROUTE_ORDER_UPLOAD_LIMIT - 2;
    router.post(PATH).order(early).consumes(FORM).produces(FORM).handler(this::answer);
    router
        .post(PATH)
        .order(early + 1)
        .consumes(FORM)
        .handler(context -> refuse(context, Problem.notAcceptable(FORM)));
  }

  private void answer(RoutingContext context) {
    String length = context.request().getHeader(HttpHeaders.CONTENT_LENGTH);
    if (length != null && Long.parseLong(length) > mostBytes) {
      refuse(context, tooLarge);
      return;
    }
    try {
      Detail detail = Detail.of(context.queryParams().get(Detail.PARAMETER));
      new BulkExchange(context, answers, detail, allowance, mostBytes, tooLarge).begin();
    } catch (BadParameter other) {
      refuse(context, Problem.of(other));
    }
  }

  /** Rejects the whole request and closes the connection, since its body was not read. */
  private void refuse(RoutingContext context, Problem problem) {
    context
        .response()
        .setStatusCode(problem.status())
        .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
        .putHeader(HttpHeaders.CACHE_CONTROL, "no-store")
        .putHeader(HttpHeaders.CONNECTION, "close")
        .end(Buffer.buffer(answers.bytes(problem)));
  }
}
