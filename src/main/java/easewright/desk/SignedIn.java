package easewright.desk;

import easewright.access.Allowance;
import easewright.access.ClinicDoor;
import easewright.access.OwnPages;
import easewright.clinic.Role;
import io.vertx.core.http.Cookie;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.ws.rs.ForbiddenException;
import jakarta.ws.rs.core.NewCookie;
import jakarta.ws.rs.core.NewCookie.SameSite;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Optional;
import org.apache.commons.codec.digest.HmacAlgorithms;
import org.apache.commons.codec.digest.HmacUtils;

/**
 * The visitor of a page, identified by the key in their cookie. There is no server session, so any
 * machine that shares the store can answer. Identifying the visitor reads the store: call it on a
 * worker thread only.
 */
@RequestScoped
public class SignedIn {
  /** The hidden field that proves a form is ours. */
  public static final String TOKEN = "token";

  private static final String PATH = "/desk";

  private final ClinicDoor door;
  private final OwnPages ownPages;
  private final Allowance allowance;
  private final RoutingContext call;

  SignedIn(ClinicDoor door, OwnPages ownPages, Allowance allowance, RoutingContext call) {
    this.door = door;
    this.ownPages = ownPages;
    this.allowance = allowance;
    this.call = call;
  }

  /** The key as an {@code Authorization} header; null without a cookie. */
  public String authorization() {
    Cookie cookie = call.request().getCookie(ClinicDoor.COOKIE);
    return cookie == null ? null : ClinicDoor.bringing(cookie.getValue());
  }

  /** The visitor; empty without a valid key. */
  public Optional<ClinicViewer> who() {
    return door.find(authorization()).map(caller -> new ClinicViewer(caller, token()));
  }

  /**
   * The visitor, admitted to a clinic by the same rules as at the endpoints.
   *
   * @throws jakarta.ws.rs.NotFoundException if it is another clinic's key
   * @throws easewright.clinic.NotAllowed if the key has another role
   */
  public ClinicViewer enter(String clinic, Role... allowed) {
    return new ClinicViewer(door.enter(authorization(), clinic, allowed), token());
  }

  /**
   * The value of {@link #TOKEN} in forms. It is derived from the key, so it need not be stored, and
   * does not reveal the key. "" without a cookie.
   */
  public String token() {
    String authorization = authorization();
    return authorization == null
        ? ""
        : new HmacUtils(HmacAlgorithms.HMAC_SHA_256, authorization).hmacHex("a form of the desk");
  }

  /**
   * Rejects a form that was not sent from one of our pages for the same key.
   *
   * @throws ForbiddenException if it was sent from another site, or without the token
   */
  public void mustBeOurs(FilledForm form) {
    mustBeSentFromHere();
    byte[] given = form.value(TOKEN).getBytes(StandardCharsets.UTF_8);
    byte[] wanted = token().getBytes(StandardCharsets.UTF_8);
    if (wanted.length > 0 && !MessageDigest.isEqual(given, wanted)) {
      throw new ForbiddenException();
    }
  }

  /**
   * Rejects cross-site requests.
   *
   * @throws ForbiddenException if the request is one
   */
  void mustBeSentFromHere() {
    if (!ownPages.mayHaveSent(call.request())) {
      throw new ForbiddenException();
    }
  }

  /**
   * Counts a typed-in key that is invalid.
   *
   * @throws easewright.access.TooOften if the client has sent too many
   */
  void countWrongKey() {
    allowance.countWrongKey(call);
  }

  /** The call itself. */
  HttpServerRequest request() {
    return call.request();
  }

  /** The sign-in cookie; it ends with the browser session. */
  NewCookie cookie(String key) {
    return with(key, NewCookie.DEFAULT_MAX_AGE);
  }

  /** A cookie that signs out. */
  NewCookie forgotten() {
    return with("", 0);
  }

  private NewCookie with(String value, int maxAge) {
    return new NewCookie.Builder(ClinicDoor.COOKIE)
        .value(value)
        .path(PATH)
        .httpOnly(true)
        .secure(call.request().isSSL() || "https".equals(call.request().scheme()))
        .sameSite(SameSite.STRICT)
        .maxAge(maxAge)
        .build();
  }
}
