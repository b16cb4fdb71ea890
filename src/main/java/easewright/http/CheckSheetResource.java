package easewright.http;

import easewright.answering.Edition;
import easewright.answering.RuleBookService;
import easewright.saying.CheckPages;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;

/** Blank sheets to print and fill in by hand. */
@Path("/v1/check-sheets")
@Produces("text/html;charset=UTF-8")
@NonBlocking
@Unchanging
public class CheckSheetResource {
  private final RuleBookService rules;

  CheckSheetResource(RuleBookService rules) {
    this.rules = rules;
  }

  @GET
  @Path("/measuring")
  public String measuring() {
    return CheckPages.measuringSheet().render();
  }

  @GET
  @Path("/cloth")
  public String cloth() {
    Edition now = rules.edition();
    return CheckPages.clothSheet(
            now.protocol(), now.book().source().wording().say("tools-and-blades"))
        .render();
  }
}
