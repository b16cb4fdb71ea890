package easewright.api;

import easewright.rulebook.Catalog.SignEntry;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import java.util.Map;

/** The signs a fitting can report. */
@Path("/v1/signs")
@Produces(MediaType.APPLICATION_JSON)
@NonBlocking
public class SignResource {
  private final InForce rules;

  SignResource(InForce rules) {
    this.rules = rules;
  }

  /** What an asker needs of a catalog entry; how often it means nothing is the rules' business. */
  public record SignNote(
      String id,
      String name,
      String ask,
      String check,
      List<String> where,
      boolean sided,
      List<String> look,
      Map<String, String> degrees,
      String amount,
      String effort,
      String isNot,
      boolean redFlag,
      List<String> phrases) {
    static SignNote of(SignEntry sign) {
      return new SignNote(
          sign.id(),
          sign.name(),
          sign.ask(),
          sign.check(),
          sign.where(),
          sign.sided(),
          sign.look(),
          sign.degrees(),
          sign.amount(),
          sign.effort(),
          sign.isNot(),
          sign.redFlag(),
          sign.phrases());
    }
  }

  @GET
  public List<SignNote> all() {
    return rules.now().book().catalog().signs().values().stream().map(SignNote::of).toList();
  }
}
