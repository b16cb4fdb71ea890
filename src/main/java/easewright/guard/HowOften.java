package easewright.guard;

import easewright.api.ClinicDoor;
import easewright.api.Place;
import easewright.api.Problem;
import io.github.bucket4j.ConsumptionProbe;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * How often one place may do what is dear to abuse: open clinics, and try keys or links that open
 * nothing. Answers are counted only where {@code easewright.limit.answers} says so; {@link AtOnce}
 * bounds what they cost. The headers are those of draft-ietf-httpapi-ratelimit-headers-10.
 */
@Singleton
class HowOften {
  /** After {@link AtOnce}, before a closed service looks for keys. */
  private static final int PRIORITY = 280;

  private static final List<String> OPENINGS =
      List.of(
          "/v1/clinics", "/v1/clinics/samples", "/desk/clinics/new", "/desk/clinics/new/sample");
  private static final List<String> LINKS = List.of("/v1/wearer-links/", "/desk/wearer/");
  private static final String SIGN_IN = "/desk/sign-in";

  private final Quota openings;
  private final Quota wrongKeys;
  private final Optional<Quota> answers;
  private final Refusal tooMany =
      new Refusal(
          Problem.of(
              "too-many",
              "Too many requests from one place",
              429,
              "Wait as long as the header Retry-After says. Nothing of the request was read."));

  HowOften(
      @ConfigProperty(name = "easewright.limit.openings") String openings,
      @ConfigProperty(name = "easewright.limit.wrong-keys") String wrongKeys,
      @ConfigProperty(name = "easewright.limit.answers") Optional<String> answers) {
    this.openings = new Quota("openings", openings);
    this.wrongKeys = new Quota("wrong-keys", wrongKeys);
    this.answers = answers.map(written -> new Quota("answers", written));
  }

  void register(@Observes Filters filters) {
    filters.register(this::check, PRIORITY);
  }

  private void check(RoutingContext call) {
    String path = call.normalizedPath();
    boolean post = call.request().method().equals(HttpMethod.POST);
    if (post && OPENINGS.contains(path)) {
      count(openings, call);
    } else if (bringsKey(call, path, post)) {
      tryKey(call, path);
    } else if (post && answers.isPresent()) {
      count(answers.get(), call);
    } else {
      call.next();
    }
  }

  private void count(Quota quota, RoutingContext call) {
    ConsumptionProbe one = quota.count(Place.of(call));
    long wait = Quota.seconds(one.getNanosToWaitForRefill());
    tell(quota, call.response(), one.getRemainingTokens(), wait);
    if (one.isConsumed()) {
      call.next();
    } else {
      tooMany.answer(call, Math.max(1, wait));
    }
  }

  /** Only what opens nothing counts, so whoever has a key is never held up by using it. */
  private void tryKey(RoutingContext call, String path) {
    String place = Place.of(call);
    long wait = wrongKeys.secondsToWait(place);
    if (wait > 0) {
      tell(wrongKeys, call.response(), 0, wait);
      tooMany.answer(call, wait);
      return;
    }
    Ending.of(
        call,
        () -> {
          if (openedNothing(call.response().getStatusCode(), path)) {
            wrongKeys.count(place);
          }
        });
    call.next();
  }

  private static boolean bringsKey(RoutingContext call, String path, boolean post) {
    return LINKS.stream().anyMatch(path::startsWith)
        || post && path.equals(SIGN_IN)
        || call.request().headers().contains(HttpHeaders.AUTHORIZATION)
        || path.startsWith("/desk/") && call.request().getCookie(ClinicDoor.COOKIE) != null;
  }

  private static boolean openedNothing(int status, String path) {
    return switch (status) {
      case 401 -> true;
      case 404 -> LINKS.stream().anyMatch(path::startsWith);
      case 422 -> path.equals(SIGN_IN);
      default -> false;
    };
  }

  private static void tell(Quota quota, HttpServerResponse response, long remaining, long wait) {
    response
        .putHeader("RateLimit-Policy", quota.policy())
        .putHeader("RateLimit", quota.left(remaining, wait));
  }
}
