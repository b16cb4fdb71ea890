package easewright.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;

/** The contract this service implements, as written by hand; a derived copy is at /openapi-3.0. */
@Path("/")
@NonBlocking
public class ContractResource {
  private final String yaml = Contract.yaml();
  private final JsonNode json = Contract.withExamples();

  @GET
  @Path("/openapi.yaml")
  @Produces("application/yaml;charset=UTF-8")
  public String yaml() {
    return yaml;
  }

  @GET
  @Path("/openapi.json")
  @Produces(MediaType.APPLICATION_JSON)
  public JsonNode json() {
    return json;
  }

  @GET
  @Path("/examples/{name}")
  @Produces(MediaType.APPLICATION_JSON)
  public String example(@PathParam("name") String name) {
    return Contract.example(name).orElseThrow(NotFoundException::new);
  }
}
