package easewright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.answering.RoundReader;
import easewright.clinic.Case;
import easewright.clinic.Note;
import easewright.clinic.Photo;
import easewright.clinic.Round;
import easewright.clinic.Story;
import easewright.diagnosis.Answer;
import easewright.reply.Reply;
import easewright.saying.ReplyLength;
import easewright.saying.ReplyWriter;
import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.List;

/** Prepares cases for display. */
@Singleton
class CaseViews {
  private final RoundReader fittings;
  private final ReplyWriter replies;

  CaseViews(RoundReader fittings, ReplyWriter replies) {
    this.fittings = fittings;
    this.replies = replies;
  }

  /** A case with its rounds, for display. */
  public record Shown(Case current, List<ShownRound> rounds, List<Note> notes) {
    /** The latest round; null without rounds. */
    public ShownRound last() {
      return rounds.isEmpty() ? null : rounds.get(rounds.size() - 1);
    }
  }

  /** A change tried before a fitting; amount and outcome are null if not reported. */
  public record Tried(String adjustment, String amount, String outcome) {}

  /**
   * A round for display.
   *
   * @param advice as given; null if an older version wrote it in a form this one cannot read
   * @param reply the reply derived from the advice; null without advice
   * @param tried what was changed before the fitting
   * @param draft a draft reply; "" without advice
   * @param photos of it
   */
  public record ShownRound(
      Round round,
      Answer advice,
      Reply reply,
      List<Tried> tried,
      String draft,
      List<Photo> photos) {
    /** Whether the advice starts with a warning. */
    public boolean isWarning() {
      return reply != null && !reply.cautions().isEmpty();
    }
  }

  /**
   * Prepares a case.
   *
   * @param site the part of links before their path, in a draft
   */
  Shown shown(Story story, String site) {
    return new Shown(
        story.current(),
        story.rounds().stream().map(round -> shown(round, photosOf(story, round), site)).toList(),
        story.notes());
  }

  private static List<Photo> photosOf(Story story, Round round) {
    return story.photos().stream().filter(photo -> photo.round() == round.number()).toList();
  }

  private ShownRound shown(Round round, List<Photo> photos, String site) {
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
                    replies.text(advice, ReplyLength.SHORT, site),
                    photos))
        .orElseGet(() -> new ShownRound(round, null, null, tried, "", photos));
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
