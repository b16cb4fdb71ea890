package easewright.desk;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.CutPlanService;
import easewright.pattern.Layer;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.pattern.Piece;
import easewright.plan.CutPlan;
import easewright.request.FaultyRequest;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestResponse;

/** Form for what to cut and to buy: first the pattern, then its choices. */
@Path("/desk/cut")
@Produces(DeskResource.HTML)
public class CutPage {
  private static final String SHEET = "/pattern/sheet";

  private final CutPlanService plans;
  private final PatternSheets sheets;

  CutPage(CutPlanService plans, PatternSheets sheets) {
    this.plans = plans;
    this.sheets = sheets;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance cutFrom(List<PatternSheet> sheets);

    static native TemplateInstance cut(
        FilledForm form,
        CutPlan plan,
        PatternSheet sheet,
        List<String> layers,
        List<String> fields);
  }

  @GET
  public String blank(@QueryParam("sheet") String sheet) {
    return sheets
        .find(sheet == null ? "" : sheet)
        .map(known -> page(FilledForm.blank(), null, known))
        .orElseGet(() -> Pages.cutFrom(sheets.offered()).render());
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public RestResponse<String> planned(byte[] body) {
    FilledForm form = FilledForm.of(body);
    PatternSheet sheet = sheets.find(form.value(SHEET)).orElse(null);
    if (sheet == null) {
      return RestResponse.ok(Pages.cutFrom(sheets.offered()).render());
    }
    try {
      ObjectNode request = form.put(fields(sheet), List.of());
      return RestResponse.ok(page(form, plans.plan(request), sheet));
    } catch (FaultyRequest refusal) {
      return RestResponse.ResponseBuilder.<String>create(refusal.status())
          .entity(page(form.refused(refusal), null, sheet))
          .build();
    }
  }

  private static String page(FilledForm form, CutPlan plan, PatternSheet sheet) {
    List<String> own = fields(sheet).stream().map(Field::pointer).toList();
    return Pages.cut(form, plan, sheet, layers(sheet), own).render();
  }

  /** The cloths used by the pieces of the sheet under any choice. */
  private static List<String> layers(PatternSheet sheet) {
    return Stream.of(Layer.values())
        .filter(layer -> sheet.pieces().stream().map(Piece::layer).anyMatch(layer::equals))
        .map(layer -> layer.name().toLowerCase(Locale.ROOT))
        .toList();
  }

  private static List<Field> fields(PatternSheet sheet) {
    List<Field> fields = new ArrayList<>(List.of(Field.text(SHEET), Field.text("/size")));
    sheet.choices().forEach(choice -> fields.add(Field.text("/choices/" + choice.id())));
    for (String layer : layers(sheet)) {
      String cloth = "/cloths/" + layer;
      fields.add(Field.length(cloth + "/width"));
      fields.add(Field.text(cloth + "/stretch"));
      fields.add(Field.text(cloth + "/nap"));
      fields.add(new Field(cloth + "/shrinkage", "%", "%"));
    }
    return fields;
  }
}
