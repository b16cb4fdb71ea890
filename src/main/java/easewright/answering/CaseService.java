package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.clinic.Caller;
import easewright.clinic.Case;
import easewright.clinic.ClinicStore;
import easewright.clinic.Fitted;
import easewright.clinic.GroupReply;
import easewright.clinic.Note;
import easewright.clinic.Outcome;
import easewright.clinic.Round;
import easewright.clinic.Story;
import easewright.request.ClinicForm;
import easewright.request.Standing;
import jakarta.inject.Singleton;
import java.util.List;

/**
 * Changes the cases of a clinic, for helpers and, where the store allows it, for wearers. Requests
 * are JSON in the contract's form; each method throws {@link easewright.request.FaultyRequest} with
 * every fault of its request.
 */
@Singleton
public class CaseService {
  private final ClinicStore store;
  private final RoundReader fittings;
  private final VoiceService voices;

  CaseService(ClinicStore store, RoundReader fittings, VoiceService voices) {
    this.store = store;
    this.fittings = fittings;
    this.voices = voices;
  }

  /** Opens a case without a round. */
  public Case open(Caller caller, JsonNode request) {
    return store.cases().open(caller, nicknameIn(request));
  }

  /** Opens a case with its first round, atomically. */
  public Case open(Caller caller, JsonNode request, JsonNode fitting) {
    String nickname = nicknameIn(request);
    return store
        .rounds()
        .open(caller, nickname, fittings.read(voices.in(caller, named(fitting, nickname))));
  }

  /** The fitting with the nickname that the reply calls the wearer by. */
  private static JsonNode named(JsonNode fitting, String nickname) {
    return fitting instanceof ObjectNode fields && !fields.has("nickname")
        ? fields.deepCopy().put("nickname", nickname)
        : fitting;
  }

  private static String nicknameIn(JsonNode request) {
    ClinicForm form = new ClinicForm(request, "nickname");
    String nickname = form.name("nickname");
    form.refuseFaulty();
    return nickname;
  }

  /** Takes an unassigned case. */
  public Case take(Caller caller, String id, JsonNode request) {
    return store.cases().take(caller, id, versionIn(request));
  }

  /** Hands a case over to another helper, or back to the queue. */
  public Case handOver(Caller caller, String id, JsonNode request) {
    ClinicForm form = new ClinicForm(request, "version", "to");
    int version = form.version();
    String to = form.idOrNone("to");
    form.refuseFaulty();
    return store.cases().handOver(caller, id, version, to);
  }

  /** Closes a case. */
  public Case close(Caller caller, String id, JsonNode request) {
    return store.cases().close(caller, id, versionIn(request));
  }

  /** Reopens a closed case. */
  public Case reopen(Caller caller, String id, JsonNode request) {
    return store.cases().reopen(caller, id, versionIn(request));
  }

  private static int versionIn(JsonNode request) {
    ClinicForm form = new ClinicForm(request, "version");
    int version = form.version();
    form.refuseFaulty();
    return version;
  }

  /** Adds a round: a fitting and its answer, in which dangers of earlier rounds still count. */
  public Round addRound(Caller caller, String id, JsonNode fitting) {
    Fitted next = fittings.read(voices.in(caller, fitting), store.rounds().told(caller, id));
    return store.rounds().add(caller, id, next);
  }

  /** What the rounds of a case reported about health that still applies. */
  public Standing standing(Caller caller, String id) {
    return fittings.standing(store.rounds().told(caller, id));
  }

  /** Stores the reply that was posted to a round, or corrects it. */
  public Story reply(Caller caller, String id, int round, JsonNode request) {
    ClinicForm form = new ClinicForm(request, "version", "text");
    int version = form.version();
    String text = form.text("text");
    form.refuseFaulty();
    return store.rounds().reply(caller, id, round, version, text);
  }

  /** Removes the reply to a round; the wearer waits again if it was the newest. */
  public Story withdrawReply(Caller caller, String id, int round, JsonNode request) {
    return store.rounds().withdrawReply(caller, id, round, versionIn(request));
  }

  /** Stores one reply for several cases with the same question. */
  public List<GroupReply.Given> replyToAll(Caller caller, JsonNode request) {
    ClinicForm form = new ClinicForm(request, "cases", "text");
    List<GroupReply.Addressed> cases = form.cases();
    String text = form.text("text");
    form.refuseFaulty();
    return store.rounds().replyToAll(caller, cases, text).cases();
  }

  /** Stores whether the change of a round helped. */
  public Story outcome(Caller caller, String id, int round, JsonNode request) {
    ClinicForm form = new ClinicForm(request, "outcome", "said");
    Outcome outcome = form.oneOf("outcome", List.of(Outcome.values()));
    String said = form.textOrNone("said");
    form.refuseFaulty();
    return store.rounds().outcome(caller, id, round, outcome, said);
  }

  /** Adds a note to a case. */
  public Note note(Caller caller, String id, JsonNode request) {
    ClinicForm form = new ClinicForm(request, "text");
    String text = form.text("text");
    form.refuseFaulty();
    return store.cases().note(caller, id, text);
  }
}
