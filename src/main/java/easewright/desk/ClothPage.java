package easewright.desk;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.CheckService;
import easewright.check.ClothAnswer;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.request.FaultyRequest;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.ArrayList;
import java.util.List;
import org.jboss.resteasy.reactive.RestResponse;

/** Form for what a cloth or an elastic is suitable for. */
@Path("/desk/cloth")
@Produces(DeskResource.HTML)
@NonBlocking
public class ClothPage {
  private static final String SHEET = "/pattern/sheet";
  private static final List<String> ROLES = List.of("main", "lining", "support");
  private static final List<Field> FIELDS = fields();
  private static final List<String> OWN_FAULTS = FIELDS.stream().map(Field::pointer).toList();

  private final CheckService checks;
  private final PatternSheets sheets;

  ClothPage(CheckService checks, PatternSheets sheets) {
    this.checks = checks;
    this.sheets = sheets;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance cloth(
        FilledForm form,
        ClothAnswer answer,
        List<PatternSheet> sheets,
        List<String> roles,
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
      return RestResponse.ok(page(form, checks.cloth(request)));
    } catch (FaultyRequest refusal) {
      return RestResponse.ResponseBuilder.<String>create(refusal.status())
          .entity(page(form.refused(refusal), null))
          .build();
    }
  }

  private String page(FilledForm form, ClothAnswer answer) {
    return Pages.cloth(form, answer, sheets.offeredWith(form.value(SHEET)), ROLES, OWN_FAULTS)
        .render();
  }

  private static List<Field> fields() {
    List<Field> fields = new ArrayList<>();
    fields.add(Field.length("/body/underbust"));
    fields.add(Field.text(SHEET));
    for (String role : ROLES) {
      for (String pulled : List.of("around", "along")) {
        for (String read : List.of("marked", "stretched", "relaxed")) {
          fields.add(Field.length("/cloth/" + role + "/" + pulled + "/" + read));
        }
      }
      fields.add(new Field("/cloth/" + role + "/weight", "g/m²", "oz/yd²"));
    }
    fields.add(Field.width("/elastic/width"));
    for (String read : List.of("relaxed", "stretched", "full", "cut")) {
      fields.add(Field.length("/elastic/" + read));
    }
    fields.add(new Field("/elastic/load", "gf", "lbf"));
    return fields;
  }
}
