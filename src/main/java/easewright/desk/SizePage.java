package easewright.desk;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.CheckService;
import easewright.check.SizeAnswer;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.request.FaultyRequest;
import easewright.size.Region;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.jboss.resteasy.reactive.RestResponse;

/** Form for the size to cut. */
@Path("/desk/size")
@Produces(DeskResource.HTML)
@NonBlocking
public class SizePage {
  private static final String SHEET = "/pattern/sheet";
  private static final List<Field> FIELDS =
      List.of(
          Field.length("/body/bust"),
          Field.length("/body/underbust"),
          Field.length("/body/upperChest"),
          Field.text("/measuredBy"),
          Field.text(SHEET),
          Field.text("/label/text"),
          Field.text("/label/printedIn"));
  private static final List<String> OWN_FAULTS = FIELDS.stream().map(Field::pointer).toList();

  private final CheckService checks;
  private final PatternSheets sheets;

  SizePage(CheckService checks, PatternSheets sheets) {
    this.checks = checks;
    this.sheets = sheets;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance size(
        FilledForm form,
        SizeAnswer answer,
        List<PatternSheet> sheets,
        List<String> regions,
        List<String> fields);
  }

  @GET
  public String blank() {
    return page(FilledForm.blank(), null);
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public RestResponse<String> answered(byte[] body) {
    FilledForm form = FilledForm.of(body);
    try {
      ObjectNode request = form.put(FIELDS, CircumstanceBoxes.FLAGS);
      return RestResponse.ok(page(form, checks.size(request)));
    } catch (FaultyRequest refusal) {
      return RestResponse.ResponseBuilder.<String>create(refusal.status())
          .entity(page(form.refused(refusal), null))
          .build();
    }
  }

  private String page(FilledForm form, SizeAnswer answer) {
    return Pages.size(
            form, answer, sheets.offeredWith(form.value(SHEET)), Region.wireNames(), OWN_FAULTS)
        .render();
  }
}
