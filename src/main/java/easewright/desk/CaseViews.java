package easewright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.answering.RoundReader;
import easewright.clinic.Case;
import easewright.clinic.Note;
import easewright.clinic.Round;
import easewright.clinic.Story;
import easewright.diagnosis.Answer;
import easewright.reply.Reply;
import easewright.saying.ReplyLength;
import easewright.saying.ReplyWriter;
import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.List;

/** Makes stories ready to be shown. */
@Singleton
class CaseViews {
  private final RoundReader fittings;
  private final ReplyWriter replies;

  CaseViews(RoundReader fittings, ReplyWriter replies) {
    this.fittings = fittings;
    this.replies = replies;
  }

  /** A case with its rounds as they are shown. */
  public record Shown(Case current, List<ShownRound> rounds, List<Note> notes) {
    /** The newest round; null without rounds. */
    public ShownRound last() {
      return rounds.isEmpty() ? null : rounds.get(rounds.size() - 1);
    }
  }

  /** A change tried before a fitting; amount and outcome are null where not told. */
  public record Tried(String adjustment, String amount, String outcome) {}

  /**
   * A round as it is shown.
   *
   * @param advice as it was given; null where an older service wrote what this one can't read
   * @param reply what is said of the advice; null without it
   * @param tried what was changed before the fitting
   * @param draft a reply to begin from; "" without advice
   */
  public record ShownRound(
      Round round, Answer advice, Reply reply, List<Tried> tried, String draft) {
    /** Whether the advice warns before it advises. */
    public boolean isWarning() {
      return reply != null && !reply.cautions().isEmpty();
    }
  }

  /**
   * A story.
   *
   * @param site what stands before the path of links in a draft
   */
  Shown shown(Story story, String site) {
    return new Shown(
        story.current(),
        story.rounds().stream().map(round -> shown(round, site)).toList(),
        story.notes());
  }

  private ShownRound shown(Round round, String site) {
    List<Tried> tried = tried(round.request());
    return fittings
        .asGiven(round.fitted())
        .map(
            advice ->
                new ShownRound(
                    round,
                    advice,
                    Reply.of(advice),
                    tried,
                    replies.text(advice, ReplyLength.SHORT, site)))
        .orElseGet(() -> new ShownRound(round, null, null, tried, ""));
  }

  static List<Tried> tried(JsonNode request) {
    List<Tried> tried = new ArrayList<>();
    for (JsonNode one : request.path("earlier")) {
      tried.add(
          new Tried(
              one.path("adjustment").asText(),
              one.path("amount").textValue(),
              one.path("outcome").textValue()));
    }
    return tried;
  }
}
