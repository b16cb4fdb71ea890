package easewright.api;

import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.NotAllowed;
import easewright.clinic.Role;
import jakarta.inject.Singleton;
import jakarta.ws.rs.NotFoundException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Tells who calls by the key they bring, and lets them into that key's clinic only. */
@Singleton
public class ClinicDoor {
  /** The cookie that brings a key to the desk's pages. */
  public static final String COOKIE = "easewright-key";

  private static final String BEARER = "Bearer ";

  private final ClinicStore store;
  private final boolean open;
  private final Optional<String> foundingKey;

  ClinicDoor(
      ClinicStore store,
      @ConfigProperty(name = "easewright.open") boolean open,
      @ConfigProperty(name = "easewright.clinic.founding-key") Optional<String> foundingKey) {
    this.store = store;
    this.open = open;
    this.foundingKey = foundingKey;
  }

  /**
   * Whoever holds the key of an {@code Authorization} header (RFC 6750, section 2.1).
   *
   * @throws NoKey unless it is the key of some clinic
   */
  Caller holder(String authorization) {
    return find(authorization).orElseThrow(NoKey::new);
  }

  /** An {@code Authorization} header that brings a key. */
  public static String bringing(String key) {
    return BEARER + key;
  }

  /** The same, or nothing. */
  public Optional<Caller> find(String authorization) {
    boolean bearer =
        authorization != null && authorization.regionMatches(true, 0, BEARER, 0, BEARER.length());
    return bearer
        ? store.keys().holder(authorization.substring(BEARER.length()).strip())
        : Optional.empty();
  }

  /**
   * The same, about to look into a clinic; what that clinic no longer keeps is deleted first.
   *
   * @throws NotFoundException when it is another clinic's key
   */
  public Caller enter(String authorization, String clinic) {
    Caller caller = holder(authorization);
    if (!caller.clinic().equals(clinic)) {
      throw new NotFoundException();
    }
    store.retention().expireFor(caller);
    return caller;
  }

  /**
   * The same for some roles only, so that others are refused before their request is read.
   *
   * @throws NotAllowed when the key is of another role
   */
  public Caller enter(String authorization, String clinic, Role... allowed) {
    Caller caller = enter(authorization, clinic);
    caller.mustBe(allowed);
    return caller;
  }

  /**
   * The wearer whom a link belongs to.
   *
   * @throws NotFoundException when it is no link, or no longer one
   */
  public Caller follow(String link) {
    Caller caller =
        store
            .keys()
            .holder(link)
            .filter(one -> one.caseId() != null)
            .orElseThrow(NotFoundException::new);
    store.retention().expireFor(caller);
    return store.keys().holder(link).orElseThrow(NotFoundException::new);
  }

  /** Whether opening a clinic takes a founding key; null where none can be opened at all. */
  public Boolean asksFounders() {
    return foundingKey.isPresent() ? Boolean.TRUE : open ? Boolean.FALSE : null;
  }

  /**
   * Whether a clinic may be opened: by anybody, or by whoever knows the configured founding key. A
   * service that is closed and has none opens no clinics.
   *
   * @throws NoKey when not
   */
  void mayFound(String authorization) {
    if (foundingKey.isEmpty()) {
      if (!open) {
        throw new NoKey();
      }
      return;
    }
    byte[] wanted = (BEARER + foundingKey.get()).getBytes(StandardCharsets.UTF_8);
    byte[] given = (authorization == null ? "" : authorization).getBytes(StandardCharsets.UTF_8);
    if (!MessageDigest.isEqual(wanted, given)) {
      throw new NoKey();
    }
  }
}
