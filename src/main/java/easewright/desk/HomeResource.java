package easewright.desk;

import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import org.jboss.resteasy.reactive.RestResponse;

/** Redirects the root path to the desk. */
@Path("/")
@NonBlocking
public class HomeResource {
  @GET
  public RestResponse<String> toTheDesk() {
    return SignInPage.seeOther("/desk");
  }
}
