package easewright.access;

import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.NotAllowed;
import easewright.clinic.NotHere;
import easewright.clinic.Role;
import io.quarkus.logging.Log;
import io.quarkus.runtime.StartupEvent;
import io.vertx.core.http.HttpServerRequest;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Identifies callers by their key and admits them to that key's clinic only. */
@Singleton
public class ClinicDoor {
  /** The cookie that carries a key to the desk's pages. */
  public static final String COOKIE = "easewright-key";

  private static final String BEARER = "Bearer ";

  private final ClinicStore store;
  private final boolean open;
  private final Optional<String> foundingKey;
  private final boolean forThisMachine;

  ClinicDoor(
      ClinicStore store,
      @ConfigProperty(name = "easewright.open") boolean open,
      @ConfigProperty(name = "easewright.clinic.founding-key") Optional<String> foundingKey,
      @ConfigProperty(name = "quarkus.http.host") String host) {
    this.store = store;
    this.open = open;
    this.foundingKey = foundingKey;
    this.forThisMachine = ThisMachine.isLoopback(host);
  }

  void warnIfNobodyMayFound(@Observes StartupEvent started) {
    if (foundingKey.isEmpty() && !(open && forThisMachine)) {
      Log.warn(
          "Nobody can open a clinic: set easewright.clinic.founding-key, a word that whoever opens"
              + " one must send. Without it only a service that is open and listens on this machine"
              + " alone (quarkus.http.host=127.0.0.1) opens clinics.");
    }
  }

  /**
   * The caller who holds the key of an {@code Authorization} header (RFC 6750, section 2.1).
   *
   * @throws NoKey if the key is not that of a clinic
   */
  Caller holder(String authorization) {
    return find(authorization).orElseThrow(NoKey::new);
  }

  /** An {@code Authorization} header that carries a key. */
  public static String bringing(String key) {
    return BEARER + key;
  }

  /** The same, or empty. */
  public Optional<Caller> find(String authorization) {
    boolean bearer =
        authorization != null && authorization.regionMatches(true, 0, BEARER, 0, BEARER.length());
    return bearer
        ? store.keys().holder(authorization.substring(BEARER.length()).strip())
        : Optional.empty();
  }

  /**
   * The same, admitted to a clinic; deletes that clinic's expired data first.
   *
   * @throws NotHere if it is another clinic's key
   */
  public Caller enter(String authorization, String clinic) {
    Caller caller = holder(authorization);
    if (!caller.clinic().equals(clinic)) {
      throw new NotHere();
    }
    store.retention().expireFor(caller);
    return caller;
  }

  /**
   * The same for some roles only, so that others are rejected before their request is read.
   *
   * @throws NotAllowed if the key has another role
   */
  public Caller enter(String authorization, String clinic, Role... allowed) {
    Caller caller = enter(authorization, clinic);
    caller.mustBe(allowed);
    return caller;
  }

  /**
   * The wearer a link belongs to.
   *
   * @throws NotHere if the link is invalid or revoked
   */
  public Caller follow(String link) {
    Caller caller =
        store.keys().holder(link).filter(one -> one.caseId() != null).orElseThrow(NotHere::new);
    store.retention().expireFor(caller);
    return store.keys().holder(link).orElseThrow(NotHere::new);
  }

  /**
   * A name for a valid key or link, including the founding key.
   *
   * @param key the key's text
   */
  public Optional<String> nameOf(String key) {
    return foundingKey.isPresent() && isFoundingKey(bringing(key))
        ? Optional.of("founding")
        : store.keys().holder(key).map(Caller::key).or(() -> store.links().nameOf(key));
  }

  /** Who may open clinics. */
  public enum Founding {
    ANYBODY,
    WHO_KNOWS_THE_KEY,
    NOBODY
  }

  /**
   * Who may open clinics by a call. Without a founding key only a caller on the machine itself may,
   * and only if the service is open and listens on loopback only.
   */
  public Founding founding(HttpServerRequest call) {
    if (foundingKey.isPresent()) {
      return Founding.WHO_KNOWS_THE_KEY;
    }
    return open && forThisMachine && ThisMachine.sent(call) ? Founding.ANYBODY : Founding.NOBODY;
  }

  /** Whether a call with this {@code Authorization} header may open a clinic. */
  public boolean opensTo(String authorization, HttpServerRequest call) {
    return switch (founding(call)) {
      case ANYBODY -> true;
      case NOBODY -> false;
      case WHO_KNOWS_THE_KEY -> isFoundingKey(authorization);
    };
  }

  private boolean isFoundingKey(String authorization) {
    byte[] wanted = bringing(foundingKey.get()).getBytes(StandardCharsets.UTF_8);
    byte[] given = (authorization == null ? "" : authorization).getBytes(StandardCharsets.UTF_8);
    return MessageDigest.isEqual(wanted, given);
  }

  /**
   * Rejects callers who may not open a clinic.
   *
   * @throws NoFounding if nobody may
   * @throws NoKey if only others may
   */
  public void mayFound(String authorization, HttpServerRequest call) {
    if (founding(call) == Founding.NOBODY) {
      throw new NoFounding();
    }
    if (!opensTo(authorization, call)) {
      throw new NoKey();
    }
  }
}
