package easewright.desk;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.access.PublicAddress;
import easewright.answering.CaseService;
import easewright.clinic.Case;
import easewright.clinic.ClinicStore;
import easewright.clinic.Queue;
import easewright.request.FaultyRequest;
import easewright.saying.CaseNotes.GivenNote;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestResponse;

/** One reply for all cases with the same question. */
@Path("/desk/clinics/{clinic}/same/{group}")
@Produces(DeskResource.HTML)
@Blocking
public class SameQuestionPage {
  private final SignedIn signedIn;
  private final ClinicStore store;
  private final CaseService cases;
  private final CaseViews stories;
  private final PublicAddress address;

  SameQuestionPage(
      SignedIn signedIn,
      ClinicStore store,
      CaseService cases,
      CaseViews stories,
      PublicAddress address) {
    this.signedIn = signedIn;
    this.store = store;
    this.cases = cases;
    this.stories = stories;
    this.address = address;
  }

  /** A case and the outcome of the reply to it. */
  public record Given(Case asked, GivenNote note) {}

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance sameQuestion(
        ClinicViewer who, Queue.Group group, String draft, FilledForm form);

    static native TemplateInstance sameAnswered(
        ClinicViewer who, String group, String text, List<Given> given);
  }

  @GET
  public String page(
      @PathParam("clinic") String clinic, @PathParam("group") String key, UriInfo called) {
    ClinicViewer who = signedIn.enter(clinic, ORGANISER, HELPER);
    Queue.Group group =
        store.cases().triage(who.caller()).groups().stream()
            .filter(one -> one.key().equals(key))
            .findFirst()
            .orElseThrow(NotFoundException::new);
    return page(who, group, called, FilledForm.blank());
  }

  private String page(ClinicViewer who, Queue.Group group, UriInfo called, FilledForm form) {
    String first = group.cases().get(0).id();
    CaseViews.Shown story =
        stories.shown(store.cases().story(who.caller(), first), address.site(called.getBaseUri()));
    return Pages.sameQuestion(who, group, story.last().draft(), form).render();
  }

  /** Answers the ticked cases; each is given by its id and the version it was read at. */
  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public RestResponse<String> reply(
      @PathParam("clinic") String clinic,
      @PathParam("group") String key,
      byte[] body,
      UriInfo called) {
    FilledForm form = FilledForm.of(body);
    signedIn.mustBeOurs(form);
    ClinicViewer who = signedIn.enter(clinic, ORGANISER, HELPER);
    List<Case> all = store.cases().queue(who.caller());
    try {
      List<Given> given =
          cases.replyToAll(who.caller(), request(form)).stream()
              .map(GivenNote::of)
              .map(note -> new Given(find(all, note.caseId()).orElse(null), note))
              .toList();
      return RestResponse.ok(Pages.sameAnswered(who, key, form.value("/text"), given).render());
    } catch (FaultyRequest refusal) {
      Queue.Group group =
          Queue.of(all).groups().stream()
              .filter(one -> one.key().equals(key))
              .findFirst()
              .orElseThrow(NotFoundException::new);
      return RestResponse.ResponseBuilder.<String>create(refusal.status())
          .entity(page(who, group, called, form.refused(refusal)))
          .build();
    }
  }

  /** Withdraws the reply from the cases it was kept for; whatever has changed since stays. */
  @POST
  @Path("/undo")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public RestResponse<String> undo(@PathParam("clinic") String clinic, byte[] body) {
    FilledForm form = FilledForm.of(body);
    signedIn.mustBeOurs(form);
    ClinicViewer who = signedIn.enter(clinic, ORGANISER, HELPER);
    for (JsonNode one : request(form).path("cases")) {
      find(store.cases().queue(who.caller()), one.path("case").asText())
          .filter(current -> current.version() == one.path("version").asInt())
          .filter(who::mayChange)
          .ifPresent(
              current ->
                  cases.withdrawReply(
                      who.caller(),
                      current.id(),
                      current.rounds(),
                      JsonNodeFactory.instance.objectNode().put("version", current.version())));
    }
    return SignInPage.seeOther(who.home());
  }

  private static ObjectNode request(FilledForm form) {
    ObjectNode request = JsonNodeFactory.instance.objectNode();
    for (String named : form.values("case")) {
      String[] idAndVersion = named.split(":", 2);
      ObjectNode one = request.withArray("cases").addObject().put("case", idAndVersion[0]);
      if (idAndVersion.length == 2 && idAndVersion[1].matches("[0-9]{1,9}")) {
        one.put("version", Integer.parseInt(idAndVersion[1]));
      }
    }
    if (!form.value("/text").isEmpty()) {
      request.put("text", form.value("/text"));
    }
    return request;
  }

  private static Optional<Case> find(List<Case> all, String id) {
    return all.stream().filter(one -> one.id().equals(id)).findFirst();
  }
}
