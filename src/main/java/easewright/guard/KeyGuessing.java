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
 * The keys that a call brings, wherever it brings them, and whether they open something. Whoever
 * brings one that does not is guessing, also where no key is needed. This only decides what is
 * counted; each endpoint looks at its key itself.
 */
@Singleton
class KeyGuessing {
  /** So long a key found to open something is not looked for again. */
  private static final Duration KNOWN_FOR = Duration.ofMinutes(1);

  private static final int MOST_KNOWN = 10_000;
  private static final String BEARER = "Bearer ";
  private static final Pattern LINK = Pattern.compile("/(?:v1/wearer-links|desk/wearer)/([^/]++)");

  /** Where a key is typed in; the one in the cookie, which may be an old one, does not matter. */
  static final String SIGN_IN = "/desk/sign-in";

  private final ClinicDoor door;

  /** What names a key, by the hash of the key, so that no key is kept. */
  private final Cache<String, String> known =
      Caffeine.newBuilder().maximumSize(MOST_KNOWN).expireAfterWrite(KNOWN_FOR).build();

  KeyGuessing(ClinicDoor door) {
    this.door = door;
  }

  /**
   * What was found.
   *
   * @param wrong whether one of the keys opens nothing
   * @param name what names the first of them if all open something; null if not or without a key
   */
  record Found(boolean wrong, String name) {
    static final Found NOTHING = new Found(false, null);
  }

  /** Looks for the keys of a call; a store that can't be asked tells nothing. */
  Future<Found> of(RoutingContext call, String path) {
    List<String> keys = keys(call, path);
    if (keys.isEmpty()) {
      return Future.succeededFuture(Found.NOTHING);
    }
    List<String> names = keys.stream().map(key -> known.getIfPresent(hash(key))).toList();
    if (!names.contains(null)) {
      return Future.succeededFuture(new Found(false, names.get(0)));
    }
    call.request().pause(); // its body is not to arrive before there is somebody to read it
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
