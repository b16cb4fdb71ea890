package easewright.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.contract.BundledText;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The source of the shipped pattern sheets, and their schema. */
@Path("/v1")
@NonBlocking
@Unchanging
public class SheetResource {
  private final Map<String, JsonNode> sheets = new LinkedHashMap<>();
  private final String schema = BundledText.text("patterns/pattern-sheet.schema.json");

  SheetResource() throws IOException {
    YAMLMapper yaml = new YAMLMapper();
    for (String file : BundledText.text("patterns/index.txt").lines().toList()) {
      if (!file.isBlank()) {
        JsonNode sheet = yaml.readTree(BundledText.text("patterns/" + file));
        sheets.put(sheet.path("id").asText(), sheet);
      }
    }
  }

  /** A sheet in a list. */
  public record SheetEntry(String id, String name, String summary, String link) {
    static SheetEntry of(String id, JsonNode sheet) {
      return new SheetEntry(
          id,
          sheet.path("name").asText(),
          sheet.path("summary").asText(),
          "/v1/pattern-sheets/" + id);
    }
  }

  @GET
  @Path("/pattern-sheets")
  @Produces(MediaType.APPLICATION_JSON)
  public List<SheetEntry> all() {
    return sheets.entrySet().stream()
        .map(sheet -> SheetEntry.of(sheet.getKey(), sheet.getValue()))
        .toList();
  }

  @GET
  @Path("/pattern-sheets/{id}")
  @Produces(MediaType.APPLICATION_JSON)
  public JsonNode one(@PathParam("id") String id) {
    if (!sheets.containsKey(id)) {
      throw new NotFoundException();
    }
    return sheets.get(id);
  }

  @GET
  @Path("/pattern-sheet.schema.json")
  @Produces("application/schema+json")
  public String schema() {
    return schema;
  }
}
