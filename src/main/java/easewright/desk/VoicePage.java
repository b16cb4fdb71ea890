package easewright.desk;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.VoiceService;
import easewright.clinic.ClinicVoice;
import easewright.clinic.Overtaken;
import easewright.pattern.PatternSheet;
import easewright.request.FaultyRequest;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import java.util.stream.IntStream;
import org.jboss.resteasy.reactive.RestResponse;

/** How the replies of a clinic are said: tone, units, own lines, snippets, names of patterns. */
@Path("/desk/clinics/{clinic}/voice")
@Produces(DeskResource.HTML)
@Blocking
public class VoicePage {
  /** Empty rows after those that are filled in. */
  private static final int BLANK_ROWS = 2;

  private final SignedIn signedIn;
  private final VoiceService voices;

  VoicePage(SignedIn signedIn, VoiceService voices) {
    this.signedIn = signedIn;
    this.voices = voices;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance voice(
        ClinicViewer who, Shown shown, FilledForm form, boolean overtaken, boolean saved);
  }

  /**
   * What the page shows.
   *
   * @param version the version the page is based on
   * @param voice as it is kept, or as it was just filled in
   */
  public record Shown(int version, ClinicVoice voice, List<PatternSheet> sheets) {
    /** The numbers of the rows for snippets. */
    public List<Integer> rows() {
      int rows = Math.min(ClinicVoice.MOST_SNIPPETS, voice.snippets().size() + BLANK_ROWS);
      return IntStream.range(0, rows).boxed().toList();
    }

    /** The name of a snippet, or "". */
    public String name(int row) {
      return row < voice.snippets().size() ? voice.snippets().get(row).name() : "";
    }

    /** The text of a snippet, or "". */
    public String text(int row) {
      return row < voice.snippets().size() ? voice.snippets().get(row).text() : "";
    }

    /** What the clinic calls a sheet, or "". */
    public String called(String sheet) {
      return voice.patterns().stream()
          .filter(one -> one.sheet().equals(sheet))
          .map(ClinicVoice.PatternName::name)
          .findFirst()
          .orElse("");
    }
  }

  @GET
  public String page(@PathParam("clinic") String clinic) {
    ClinicViewer who = signedIn.enter(clinic, ORGANISER, HELPER);
    return page(who, FilledForm.blank(), false, false);
  }

  private String page(ClinicViewer who, FilledForm form, boolean overtaken, boolean saved) {
    ClinicVoice.Kept kept = voices.read(who.caller());
    Shown shown =
        form.isFaulty()
            ? new Shown(form.number("/version"), typed(form), voices.patterns())
            : new Shown(kept.version(), kept.voice(), voices.patterns());
    return Pages.voice(who, shown, form, overtaken, saved).render();
  }

  /** What was filled in, whatever is wrong with it. */
  private ClinicVoice typed(FilledForm form) {
    List<ClinicVoice.Snippet> snippets =
        IntStream.range(0, ClinicVoice.MOST_SNIPPETS)
            .mapToObj(
                i -> new ClinicVoice.Snippet(snippet(form, i, "name"), snippet(form, i, "text")))
            .filter(one -> !one.name().isEmpty() || !one.text().isEmpty())
            .toList();
    List<ClinicVoice.PatternName> patterns =
        voices.patterns().stream()
            .map(one -> new ClinicVoice.PatternName(one.id(), form.value("/patterns/" + one.id())))
            .toList();
    return new ClinicVoice(
        form.value("/tone").equals("plain"),
        form.value("/units").isEmpty() ? null : form.value("/units"),
        form.value("/opening"),
        form.value("/closing"),
        snippets,
        patterns);
  }

  private static String snippet(FilledForm form, int row, String field) {
    return form.value("/snippets/" + row + "/" + field);
  }

  /** Keeps what was filled in; faults are shown above what was typed. */
  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public RestResponse<String> change(@PathParam("clinic") String clinic, byte[] body) {
    FilledForm form = FilledForm.of(body);
    signedIn.mustBeOurs(form);
    ClinicViewer who = signedIn.enter(clinic, ORGANISER, HELPER);
    try {
      voices.change(who.caller(), request(form));
      return RestResponse.ok(page(who, FilledForm.blank(), false, true));
    } catch (FaultyRequest refusal) {
      return refused(refusal.status(), page(who, form.refused(refusal), false, false));
    } catch (Overtaken late) {
      return refused(409, page(who, FilledForm.blank(), true, false));
    }
  }

  private static RestResponse<String> refused(int status, String page) {
    return RestResponse.ResponseBuilder.<String>create(status).entity(page).build();
  }

  private ObjectNode request(FilledForm form) {
    ObjectNode request = form.json("/version", "/tone", "/units", "/opening", "/closing");
    for (int i = 0; i < ClinicVoice.MOST_SNIPPETS; i++) {
      String name = snippet(form, i, "name");
      String text = snippet(form, i, "text");
      if (!name.isEmpty() || !text.isEmpty()) {
        ObjectNode snippet = request.withArray("/snippets").addObject();
        putIfFilled(snippet, "name", name);
        putIfFilled(snippet, "text", text);
      }
    }
    for (PatternSheet sheet : voices.patterns()) {
      String name = form.value("/patterns/" + sheet.id());
      if (!name.isEmpty()) {
        request.withArray("/patterns").addObject().put("sheet", sheet.id()).put("name", name);
      }
    }
    return request;
  }

  private static void putIfFilled(ObjectNode into, String field, String value) {
    if (!value.isEmpty()) {
      into.put(field, value);
    }
  }
}
