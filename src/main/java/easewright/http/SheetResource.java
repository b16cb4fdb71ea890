package easewright.http;

import easewright.contract.BundledText;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;

/** The pattern sheets that requests can name, and their schema. */
@Path("/v1")
@NonBlocking
@Unchanging
public class SheetResource {
  private final PatternSheets sheets;
  private final String schema = BundledText.text("patterns/pattern-sheet.schema.json");

  SheetResource(PatternSheets sheets) {
    this.sheets = sheets;
  }

  /** A sheet in a list. */
  public record SheetEntry(String id, String name, String summary, String link) {
    static SheetEntry of(PatternSheet sheet) {
      return new SheetEntry(
          sheet.id(), sheet.name(), sheet.summary(), "/v1/pattern-sheets/" + sheet.id());
    }
  }

  @GET
  @Path("/pattern-sheets")
  @Produces(MediaType.APPLICATION_JSON)
  public List<SheetEntry> all() {
    return sheets.offered().stream().map(SheetEntry::of).toList();
  }

  @GET
  @Path("/pattern-sheets/{id}")
  @Produces(MediaType.APPLICATION_JSON)
  public String one(@PathParam("id") String id) {
    return sheets.listed(id).orElseThrow(NotFoundException::new).json();
  }

  @GET
  @Path("/pattern-sheet.schema.json")
  @Produces("application/schema+json")
  public String schema() {
    return schema;
  }
}
