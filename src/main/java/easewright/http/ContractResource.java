package easewright.http;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.contract.Contract;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The contract this service implements, as written by hand, and a derived copy for older tools. */
@Path("/")
@NonBlocking
@Unchanging
public class ContractResource {
  private final String yaml = Contract.yaml();
  private final JsonNode json = Contract.withExamples();
  private final Map<String, String> older = new ConcurrentHashMap<>();

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
  @Path("/openapi-3.0.yaml")
  @Produces("application/yaml;charset=UTF-8")
  public String olderYaml() {
    return older.computeIfAbsent("yaml", Contract::older);
  }

  @GET
  @Path("/openapi-3.0")
  @Produces("application/yaml;charset=UTF-8")
  public String older() {
    return olderYaml();
  }

  @GET
  @Path("/openapi-3.0.json")
  @Produces(MediaType.APPLICATION_JSON)
  public String olderJson() {
    return older.computeIfAbsent("json", Contract::older);
  }

  @GET
  @Path("/examples/{name}")
  public Response example(@PathParam("name") String name) {
    String form =
        name.endsWith(".yaml")
            ? "application/yaml"
            : name.endsWith(".ndjson") ? BulkRoute.FORM : MediaType.APPLICATION_JSON;
    return Response.ok(
            Contract.example(name).orElseThrow(NotFoundException::new), form + ";charset=UTF-8")
        .build();
  }
}
