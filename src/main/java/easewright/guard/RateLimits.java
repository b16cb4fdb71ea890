package easewright.guard;

import easewright.access.Allowance;
import easewright.access.ClientAddress;
import easewright.access.ClinicDoor;
import easewright.access.TooOften;
import easewright.guard.KeyGuessing.Found;
import easewright.saying.Problem;
import io.github.bucket4j.ConsumptionProbe;
import io.quarkus.logging.Log;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Limits how often each client may request answers, open clinics, and try invalid keys or links.
 * Callers with a valid key are counted by key, so that strangers who share their address or proxy
 * cannot lock them out; made-up values change nothing. The headers follow
 * draft-ietf-httpapi-ratelimit-headers-10.
 */
@Singleton
class RateLimits implements Allowance {
  /** After {@link RequestSlots}, before a closed service checks keys. */
  private static final int PRIORITY = 280;

  private static final List<String> OPENINGS =
      List.of(
          "/v1/clinics", "/v1/clinics/samples", "/desk/clinics/new", "/desk/clinics/new/sample");
  private static final String WRONG_KEY_COUNTED = "a wrong key was counted";
  private static final String COUNTED_AS = "counted as";
  private static final String DROPPED_COOKIE =
      ClinicDoor.COOKIE + "=; Max-Age=0; Path=/desk; HttpOnly; SameSite=Strict";

  private final KeyGuessing keys;
  private final ClinicDoor door;
  private final boolean believesProxies;
  private final AtomicBoolean warnedOfProxy = new AtomicBoolean();
  private final Quota openings;
  private final Quota wrongKeys;
  private final Quota answers;
  private final Quota lines;
  private final Refusal tooMany = new Refusal(Problem.TOO_MANY);

  RateLimits(
      KeyGuessing keys,
      ClinicDoor door,
      @ConfigProperty(name = "quarkus.http.proxy.proxy-address-forwarding", defaultValue = "false")
          boolean believesProxies,
      @ConfigProperty(name = "easewright.limit.openings") String openings,
      @ConfigProperty(name = "easewright.limit.wrong-keys") String wrongKeys,
      @ConfigProperty(name = "easewright.limit.answers") String answers,
      @ConfigProperty(name = "easewright.limit.lines") String lines) {
    this.keys = keys;
    this.door = door;
    this.believesProxies = believesProxies;
    this.openings = new Quota("openings", openings);
    this.wrongKeys = new Quota("wrong-keys", wrongKeys);
    this.answers = new Quota("answers", answers);
    this.lines = new Quota("lines", lines);
  }

  void register(@Observes Filters filters) {
    filters.register(new OncePerCall("quotas", this::check), PRIORITY);
  }

  private void check(RoutingContext call) {
    warnOfProxy(call);
    String path = PlainPath.of(call);
    keys.of(call, path).onSuccess(found -> count(call, path, found));
  }

  private void count(RoutingContext call, String path, Found found) {
    if (found.wrong()) {
      dropCookie(call);
      if (!takesWrongKey(call)) {
        return;
      }
    }
    String who = found.name() == null ? ClientAddress.of(call) : "key " + found.name();
    call.put(COUNTED_AS, who);
    if (!call.request().method().equals(HttpMethod.POST) || takesTypedKey(call, path)) {
      call.next();
    } else if (OPENINGS.contains(path) && anybodyOpens(call)) {
      take(openings, ClientAddress.of(call), call);
    } else {
      take(answers, who, call);
    }
  }

  /** A key in a form is checked by its page, which accepts a valid one whatever the count. */
  private boolean takesTypedKey(RoutingContext call, String path) {
    return path.equals(KeyGuessing.SIGN_IN)
        || path.startsWith("/desk/") && OPENINGS.contains(path) && !anybodyOpens(call);
  }

  /** If a founding key is required, that key limits how many clinics are opened. */
  private boolean anybodyOpens(RoutingContext call) {
    return door.founding(call.request()) == ClinicDoor.Founding.ANYBODY;
  }

  private void take(Quota quota, String who, RoutingContext call) {
    ConsumptionProbe one = quota.count(who);
    if (one.isConsumed()) {
      setHeaders(quota, one, call.response());
      call.next();
    } else {
      refuse(quota, one, call);
    }
  }

  private boolean takesWrongKey(RoutingContext call) {
    call.put(WRONG_KEY_COUNTED, true);
    ConsumptionProbe one = wrongKeys.count(ClientAddress.of(call));
    if (!one.isConsumed()) {
      refuse(wrongKeys, one, call);
    }
    return one.isConsumed();
  }

  private void refuse(Quota quota, ConsumptionProbe none, RoutingContext call) {
    setHeaders(quota, none, call.response());
    tooMany.answer(call, Math.max(1, Quota.seconds(none.getNanosToWaitForRefill())));
  }

  @Override
  public void countWrongKey(RoutingContext call) {
    if (call.get(WRONG_KEY_COUNTED) != null) {
      return;
    }
    call.put(WRONG_KEY_COUNTED, true);
    ConsumptionProbe one = wrongKeys.count(ClientAddress.of(call));
    if (!one.isConsumed()) {
      throw new TooOften(Quota.seconds(one.getNanosToWaitForRefill()));
    }
  }

  @Override
  public boolean takesLine(RoutingContext call) {
    return lines.count(call.get(COUNTED_AS)).isConsumed();
  }

  /** Otherwise a browser would send a revoked key with every page and image. */
  private static void dropCookie(RoutingContext call) {
    if (call.request().getCookie(ClinicDoor.COOKIE) != null) {
      call.addHeadersEndHandler(
          sent -> {
            if (!call.response().headers().contains(HttpHeaders.SET_COOKIE)) {
              call.response().putHeader(HttpHeaders.SET_COOKIE, DROPPED_COOKIE);
            }
          });
    }
  }

  private void warnOfProxy(RoutingContext call) {
    boolean passedOn =
        call.request().headers().contains("X-Forwarded-For")
            || call.request().headers().contains("Forwarded");
    if (passedOn && !believesProxies && warnedOfProxy.compareAndSet(false, true)) {
      Log.warn(
          "A proxy, or somebody who plays one, says for whom it asks, and is not believed: all that"
              + " comes through it counts as one place. If it is yours, set"
              + " quarkus.http.proxy.proxy-address-forwarding=true and"
              + " quarkus.http.proxy.trusted-proxies.");
    }
  }

  private static void setHeaders(Quota quota, ConsumptionProbe one, HttpServerResponse response) {
    long wait = Quota.seconds(one.getNanosToWaitForRefill());
    response
        .putHeader("RateLimit-Policy", quota.policy())
        .putHeader("RateLimit", quota.left(one.getRemainingTokens(), wait));
  }
}
