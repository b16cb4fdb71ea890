package easewright.desk;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;

@Path("/desk/clinics/{clinic}")
@Produces(DeskResource.HTML)
@Blocking
public class QueuePage {
  private final SignedIn signedIn;

  QueuePage(SignedIn signedIn) {
    this.signedIn = signedIn;
  }

  @GET
  public String page(@PathParam("clinic") String clinic) {
    return signedIn.enter(clinic, ORGANISER, HELPER).name();
  }
}
