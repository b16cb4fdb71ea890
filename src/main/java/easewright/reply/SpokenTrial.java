package easewright.reply;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.TrialNote;
import easewright.rulebook.Voice;
import easewright.rulebook.Voice.ChangeWords;
import easewright.rulebook.Wording;

/** The trial of an answer, as a teacher asks for it. */
final class SpokenTrial {
  private final TrialNote note;
  private final ChangeWords words;
  private final SpokenPhrases phrases;
  private final SpokenEdge edge;

  private SpokenTrial(TrialNote note, ChangeWords words, SpokenPhrases phrases, SpokenEdge edge) {
    this.note = note;
    this.words = words;
    this.phrases = phrases;
    this.edge = edge;
  }

  /** Null where nothing is to be tried. */
  static SpokenTrial of(Answer answer, Voice voice, SpokenPhrases phrases) {
    TrialNote note = answer.trial();
    return note == null
        ? null
        : new SpokenTrial(
            note, voice.changes().get(note.id()), phrases, new SpokenEdge(answer, voice));
  }

  /** The cause that it would show. */
  String cause() {
    return note.cause();
  }

  /**
   * What to try, what it shows, and what comes after.
   *
   * @param told the cause that it would show, where another was named beside it; else null
   */
  String says(String told) {
    return phrases.say(
        told == null ? "trial" : "trial-of-two",
        "perhaps",
        told == null ? "" : told,
        "test",
        edge.in(Wording.fill(words.test(), "amount", amount())),
        "shows",
        words.shows(),
        "bare",
        edge.in(words.bare()));
  }

  /** "about 2 cm", or words for an amount that nobody knows. */
  String amount() {
    String said =
        note.amount() == null
            ? phrases.say("amount-untold")
            : SpokenPhrases.amount(note.amount(), phrases);
    return SpokenPhrases.lower(said);
  }

  boolean tellsNumber() {
    return note.amount() != null && words.test().contains("{amount}");
  }

  String id() {
    return note.id();
  }
}
