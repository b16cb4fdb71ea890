package easewright.desk;

import easewright.api.FaultyRequest;
import easewright.api.SignResource;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.jboss.resteasy.reactive.RestResponse;

/**
 * Where a question is answered: the form, and the answer beside it. A form posted from another site
 * would only compute an answer and show it to whoever posted it: there is no cookie to borrow and
 * nothing to change, so no token guards these forms.
 */
@Path("/desk")
@Produces(DeskResource.HTML)
@NonBlocking
public class DeskResource {
  static final String HTML = "text/html;charset=UTF-8";
  private static final List<String> OWN_FAULTS =
      List.of("/text", "/body/bust", "/body/underbust", "/pattern", "/sizeCut");

  private final FittingDesk desk;
  private final SignResource signs;
  private final PatternSheets sheets;

  DeskResource(FittingDesk desk, SignResource signs, PatternSheets sheets) {
    this.desk = desk;
    this.signs = signs;
    this.sheets = sheets;
  }

  /** The form and all that can be chosen in it. */
  public record Choices(SignPlaces signs, List<PatternSheet> sheets) {
    /** The name of a sign; its id where the rule book has no such sign. */
    public String nameOf(String sign) {
      return signs.places().stream()
          .flatMap(place -> place.signs().stream())
          .filter(one -> one.id().equals(sign))
          .map(one -> one.name())
          .findFirst()
          .orElse(sign);
    }
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance desk(
        FilledForm form, Choices choices, DeskAnswer shown, List<String> fields);

    static native TemplateInstance answer(FilledForm form, DeskAnswer shown, List<String> fields);
  }

  private record Outcome(FilledForm form, DeskAnswer shown, int status) {}

  @GET
  public String blank() {
    return Pages.desk(FilledForm.blank(), choices(), DeskAnswer.unanswered(null), OWN_FAULTS)
        .render();
  }

  /** The whole page with the answer in it, for a browser without scripts. */
  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public RestResponse<String> page(byte[] body, UriInfo called) {
    Outcome outcome = outcome(FilledForm.of(body), called);
    FilledForm form = outcome.form();
    if (form.value("goOn").equals("yes") && outcome.shown().isAnswered()) {
      DeskAnswer answered = outcome.shown();
      String asked = answered.question() == null ? "" : answered.question().sign();
      form = Conversation.goingOn(form, answered.answer().soFar(), asked);
    }
    return RestResponse.ResponseBuilder.<String>create(outcome.status())
        .entity(Pages.desk(form, choices(), outcome.shown(), OWN_FAULTS).render())
        .build();
  }

  /** The answer alone, for the script that puts it into the page. */
  @POST
  @Path("/answer")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public String answer(byte[] body, UriInfo called) {
    Outcome outcome = outcome(FilledForm.of(body), called);
    return Pages.answer(outcome.form(), outcome.shown(), OWN_FAULTS).render();
  }

  private Outcome outcome(FilledForm form, UriInfo called) {
    if (!Conversation.isBegun(form)) {
      return new Outcome(form, DeskAnswer.unanswered(null), 200);
    }
    try {
      return new Outcome(form, desk.answer(form, called.getBaseUri().toString()), 200);
    } catch (FaultyRequest refusal) {
      return new Outcome(form.refused(refusal), desk.unanswered(form), refusal.status());
    }
  }

  private Choices choices() {
    return new Choices(SignPlaces.of(signs.all()), sheets.shipped());
  }
}
