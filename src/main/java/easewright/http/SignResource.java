package easewright.http;

import easewright.answering.FittingService;
import easewright.saying.SignNote;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.util.List;

/** The signs a fitting can report. */
@Path("/v1/signs")
@Produces(MediaType.APPLICATION_JSON)
@NonBlocking
@Unchanging
public class SignResource {
  private final FittingService fittings;

  SignResource(FittingService fittings) {
    this.fittings = fittings;
  }

  @GET
  public List<SignNote> all(@QueryParam("family") String family) {
    return family == null ? fittings.signs() : fittings.signs(family);
  }
}
