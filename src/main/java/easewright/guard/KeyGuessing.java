package easewright.guard;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import easewright.access.ClinicDoor;
import io.vertx.core.Future;
import io.vertx.core.http.Cookie;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Finds the keys in a call, wherever they are sent, and whether they are valid. A call with an
 * invalid key counts as guessing, even where no key is needed. This only decides what is counted;
 * each endpoint checks its key itself.
 */
@Singleton
class KeyGuessing {
  /** How long a key found valid is not looked up again. */
  private static final Duration KNOWN_FOR = Duration.ofMinutes(1);

  private static final int MOST_KNOWN = 10_000;
  private static final String BEARER = "Bearer ";
  private static final Pattern LINK =
      Pattern.compile("/(?:v1/wearer-links|desk/(?:wearer|feed|shared))/([^/]++)");

  /**
   * The sign-in form, where a key is typed in; the key in the cookie may be outdated and is
   * ignored.
   */
  static final String SIGN_IN = "/desk/sign-in";

  private final ClinicDoor door;

  /** Key names by hash of the key, so that no key is stored. */
  private final Cache<String, String> known =
      Caffeine.newBuilder().maximumSize(MOST_KNOWN).expireAfterWrite(KNOWN_FOR).build();

  KeyGuessing(ClinicDoor door) {
    this.door = door;
  }

  /**
   * The result of a lookup.
   *
   * @param wrong whether any of the keys is invalid
   * @param name the name of the first key if all are valid; null otherwise or without a key
   */
  record Found(boolean wrong, String name) {
    static final Found NOTHING = new Found(false, null);
  }

  /** Looks up the keys of a call; an unavailable store yields no result. */
  Future<Found> of(RoutingContext call, String path) {
    List<String> keys = keys(call, path);
    if (keys.isEmpty()) {
      return Future.succeededFuture(Found.NOTHING);
    }
    List<String> names = keys.stream().map(key -> known.getIfPresent(hash(key))).toList();
    if (!names.contains(null)) {
      return Future.succeededFuture(new Found(false, names.get(0)));
    }
    call.request().pause(); // the body must not arrive before a reader is attached
    return call.vertx()
        .executeBlocking(() -> find(keys), false)
        .otherwise(Found.NOTHING)
        .onComplete(found -> call.request().resume());
  }

  private Found find(List<String> keys) {
    Found first = null;
    for (String key : keys) {
      Optional<String> name = door.nameOf(key);
      if (name.isEmpty()) {
        return new Found(true, null);
      }
      known.put(hash(key), name.get());
      first = first == null ? new Found(false, name.get()) : first;
    }
    return first;
  }

  private static List<String> keys(RoutingContext call, String path) {
    List<String> keys = new ArrayList<>();
    String header = call.request().getHeader(HttpHeaders.AUTHORIZATION);
    if (header != null && header.regionMatches(true, 0, BEARER, 0, BEARER.length())) {
      keys.add(header.substring(BEARER.length()).strip());
    }
    Cookie cookie = path.equals(SIGN_IN) ? null : call.request().getCookie(ClinicDoor.COOKIE);
    if (cookie != null) {
      keys.add(cookie.getValue());
    }
    Matcher link = LINK.matcher(path);
    if (link.lookingAt()) {
      keys.add(link.group(1));
    }
    return keys;
  }

  private static String hash(String key) {
    return DigestUtils.sha256Hex(key);
  }
}
