package easewright.desk;

import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import org.jboss.resteasy.reactive.RestResponse;

/** Whoever opens the bare address is looking for the desk. */
@Path("/")
@NonBlocking
public class HomeResource {
  @GET
  public RestResponse<String> toTheDesk() {
    return SignInPage.seeOther("/desk");
  }
}
