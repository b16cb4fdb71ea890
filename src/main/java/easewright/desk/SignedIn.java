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
 * Whoever looks at a page, known by the key in their cookie. There is no session beside it, so any
 * machine that shares the store can answer. Asking who it is reads the store: on a worker only.
 */
@RequestScoped
public class SignedIn {
  /** The hidden field that shows a form to be one of ours. */
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

  /** What the key's holder would send as an {@code Authorization} header; null without a cookie. */
  public String authorization() {
    Cookie cookie = call.request().getCookie(ClinicDoor.COOKIE);
    return cookie == null ? null : ClinicDoor.bringing(cookie.getValue());
  }

  /** Who it is; nobody without a key in force. */
  public Optional<ClinicViewer> who() {
    return door.find(authorization()).map(caller -> new ClinicViewer(caller, token()));
  }

  /**
   * Who it is, about to look into a clinic; refused as the endpoints refuse.
   *
   * @throws jakarta.ws.rs.NotFoundException when it is another clinic's key
   * @throws easewright.clinic.NotAllowed when the key is of another role
   */
  public ClinicViewer enter(String clinic, Role... allowed) {
    return new ClinicViewer(door.enter(authorization(), clinic, allowed), token());
  }

  /**
   * What forms carry in {@link #TOKEN}. It follows from the key, so that it needs no keeping, and
   * tells nobody the key. "" without a cookie.
   */
  public String token() {
    String authorization = authorization();
    return authorization == null
        ? ""
        : new HmacUtils(HmacAlgorithms.HMAC_SHA_256, authorization).hmacHex("a form of the desk");
  }

  /**
   * Refuses a form that was not sent from a page of ours for the key it comes with.
   *
   * @throws ForbiddenException when it was sent from another site, or without the token
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
   * Refuses what a page of another site sends.
   *
   * @throws ForbiddenException when it does
   */
  void mustBeSentFromHere() {
    if (!ownPages.mayHaveSent(call.request())) {
      throw new ForbiddenException();
    }
  }

  /**
   * Counts a key that was typed in and opens nothing.
   *
   * @throws easewright.access.TooOften when too many came from there
   */
  void countWrongKey() {
    allowance.countWrongKey(call);
  }

  /** The call itself. */
  HttpServerRequest request() {
    return call.request();
  }

  /** The cookie that signs in; it ends with the browser's session. */
  NewCookie cookie(String key) {
    return with(key, NewCookie.DEFAULT_MAX_AGE);
  }

  /** The cookie that signs out. */
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
