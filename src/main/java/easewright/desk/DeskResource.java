package easewright.desk;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.RestResponse;

/**
 * The page for answering a question: the form and its answer. These forms need no CSRF token: a
 * form posted from another site would only compute an answer and show it to the visitor, and change
 * nothing. {@link NewCasePage} stores a question as a case.
 */
@Path("/desk")
@Produces(DeskResource.HTML)
public class DeskResource {
  static final String HTML = "text/html;charset=UTF-8";

  private final QuestionPanel bench;
  private final SignedIn signedIn;

  DeskResource(QuestionPanel bench, SignedIn signedIn) {
    this.bench = bench;
    this.signedIn = signedIn;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance desk(
        FilledForm form,
        QuestionPanel.Choices choices,
        DeskAnswer shown,
        List<String> fields,
        ClinicViewer who);

    static native TemplateInstance answer(FilledForm form, DeskAnswer shown, List<String> fields);
  }

  @GET
  @Blocking
  public RestResponse<String> blank(@QueryParam("family") @DefaultValue("") String family) {
    FilledForm form = FilledForm.blank().with(Map.of(Conversation.FAMILY, List.of(family)));
    return page(QuestionPanel.Outcome.blank(form));
  }

  /** The whole page with the answer in it, for a browser without scripts. */
  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @Blocking
  public RestResponse<String> page(byte[] body, UriInfo called) {
    return page(bench.goingOn(FilledForm.of(body), called));
  }

  /** The answer alone, for the script that inserts it into the page. */
  @POST
  @Path("/answer")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @Blocking
  public String answer(byte[] body, UriInfo called) {
    QuestionPanel.Outcome outcome = bench.outcome(FilledForm.of(body), called);
    return Pages.answer(outcome.form(), outcome.shown(), QuestionPanel.OWN_FAULTS).render();
  }

  RestResponse<String> page(QuestionPanel.Outcome outcome) {
    ClinicViewer who = signedIn.who().orElse(null);
    return RestResponse.ResponseBuilder.<String>create(outcome.status())
        .entity(
            Pages.desk(
                    outcome.form(),
                    bench.choices(outcome),
                    outcome.shown(),
                    QuestionPanel.OWN_FAULTS,
                    who)
                .render())
        .build();
  }
}
