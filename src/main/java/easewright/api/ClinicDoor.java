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

  /** Who may open clinics. */
  public enum Founding {
    ANYBODY,
    WHO_KNOWS_THE_KEY,
    NOBODY
  }

  /** Who may open clinics here. A service that is closed and has no founding key opens none. */
  public Founding founding() {
    if (foundingKey.isPresent()) {
      return Founding.WHO_KNOWS_THE_KEY;
    }
    return open ? Founding.ANYBODY : Founding.NOBODY;
  }

  /** Whether an {@code Authorization} header may open a clinic. */
  public boolean opensTo(String authorization) {
    return switch (founding()) {
      case ANYBODY -> true;
      case NOBODY -> false;
      case WHO_KNOWS_THE_KEY -> {
        byte[] wanted = (BEARER + foundingKey.get()).getBytes(StandardCharsets.UTF_8);
        byte[] given =
            (authorization == null ? "" : authorization).getBytes(StandardCharsets.UTF_8);
        yield MessageDigest.isEqual(wanted, given);
      }
    };
  }

  /**
   * Refuses whoever may open no clinic.
   *
   * @throws NoKey when not
   */
  void mayFound(String authorization) {
    if (!opensTo(authorization)) {
      throw new NoKey();
    }
  }
}
