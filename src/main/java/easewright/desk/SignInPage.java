package easewright.desk;

import easewright.access.ClinicDoor;
import easewright.clinic.Caller;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.NewCookie;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestResponse;

/** Signing in with a key, and signing out. */
@Path("/desk")
@Produces(DeskResource.HTML)
@Blocking
public class SignInPage {
  private static final String CLINICS = "/desk/clinics/";

  private final SignedIn signedIn;
  private final ClinicDoor door;

  SignInPage(SignedIn signedIn, ClinicDoor door) {
    this.signedIn = signedIn;
    this.door = door;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance signIn(String to, boolean refused);
  }

  /** Redirects a signed-in helper to their clinic. */
  @GET
  @Path("/clinics")
  public RestResponse<String> clinic() {
    return seeOther(signedIn.who().map(ClinicViewer::home).orElse("/desk/sign-in"));
  }

  @GET
  @Path("/sign-in")
  public String form(@QueryParam("to") String to) {
    return Pages.signIn(ownPath(to), false).render();
  }

  /**
   * A wearer's link is not a key: redirects anyone who pastes one to their case, without a cookie.
   */
  @POST
  @Path("/sign-in")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public RestResponse<String> signIn(byte[] body) {
    signedIn.mustBeSentFromHere();
    FilledForm form = FilledForm.of(body);
    String key = form.value("key");
    String to = ownPath(form.value("to"));
    Optional<Caller> caller = door.find(ClinicDoor.bringing(key));
    if (caller.isEmpty()) {
      signedIn.countWrongKey();
      return RestResponse.ResponseBuilder.<String>create(422)
          .entity(Pages.signIn(to, true).render())
          .build();
    }
    if (caller.get().caseId() != null) {
      return seeOther("/desk/wearer/" + key);
    }
    return seeOther(to.isEmpty() ? CLINICS + caller.get().clinic() : to, signedIn.cookie(key));
  }

  @POST
  @Path("/sign-out")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public RestResponse<String> signOut(byte[] body) {
    signedIn.mustBeOurs(FilledForm.of(body));
    return seeOther("/desk/sign-in", signedIn.forgotten());
  }

  /** Allows redirects only to pages of the desk. */
  private static String ownPath(String to) {
    // Possessive, since Java's regex engine recurses for each repetition of a backtracking group.
    return to != null && to.matches("/desk(?:/[a-z0-9-]++)*+") ? to : "";
  }

  /**
   * Redirects to one of our pages by path only: the host is the client's claim, and a proxy may use
   * another.
   *
   * @param path not encoded; may contain anything from the request's URL
   */
  static RestResponse<String> seeOther(String path, NewCookie... cookies) {
    return RestResponse.ResponseBuilder.<String>create(303)
        .header(HttpHeaders.LOCATION, encoded(path).toString())
        .cookie(cookies)
        .build();
  }

  private static URI encoded(String path) {
    try {
      return URI.create(new URI(null, null, path, null).toASCIIString());
    } catch (URISyntaxException none) {
      throw new NotFoundException(none);
    }
  }
}
