package easewright.reply;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.PlaceNote;
import easewright.diagnosis.Answer.TriedAsGiven;
import easewright.rulebook.Voice;
import easewright.rulebook.Voice.ChangeWords;
import easewright.rulebook.Wording;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The first change of an answer, as a teacher asks for it. */
final class SpokenChange {
  private static final String RIGHT = "right";

  private final AdjustmentNote note;
  private final ChangeWords words;
  private final SpokenPhrases phrases;
  private final String size;
  private final SpokenEdge edge;

  private SpokenChange(
      AdjustmentNote note, ChangeWords words, SpokenPhrases phrases, String size, SpokenEdge edge) {
    this.note = note;
    this.words = words;
    this.phrases = phrases;
    this.size = size;
    this.edge = edge;
  }

  /** Null where nothing is advised. */
  static SpokenChange of(Answer answer, Voice voice, SpokenPhrases phrases) {
    return of(0, answer, voice, phrases);
  }

  /** The next change after the first; null where there is none. */
  static SpokenChange next(Answer answer, Voice voice, SpokenPhrases phrases) {
    return of(1, answer, voice, phrases);
  }

  /** The first change that treats a cause. */
  static Optional<SpokenChange> curing(
      String cause, Answer answer, Voice voice, SpokenPhrases phrases) {
    return IntStream.range(0, answer.adjustments().size())
        .mapToObj(i -> of(i, answer, voice, phrases))
        .filter(one -> one.cures(cause))
        .findFirst();
  }

  private static SpokenChange of(int i, Answer answer, Voice voice, SpokenPhrases phrases) {
    return answer.adjustments().size() <= i
        ? null
        : of(answer.adjustments().get(i), answer, voice, phrases);
  }

  /** The change for the time after a danger; null where none is named. */
  static SpokenChange afterwards(Answer answer, Voice voice, SpokenPhrases phrases) {
    return answer.afterwards() == null ? null : of(answer.afterwards(), answer, voice, phrases);
  }

  private static SpokenChange of(
      AdjustmentNote note, Answer answer, Voice voice, SpokenPhrases phrases) {
    String size =
        answer.size() == null || answer.size().recommended() == null
            ? null
            : answer.size().recommended().size();
    return new SpokenChange(
        note, voice.changes().get(note.id()), phrases, size, new SpokenEdge(answer, voice));
  }

  /** "take 2 cm out of the band", to stand after "I'd". */
  String does() {
    boolean sized = words.does().contains("{size}");
    boolean bare = sized ? size == null : note.amount() == null;
    String said =
        bare
            ? words.bare()
            : Wording.fill(words.does(), "amount", amount(), "size", size == null ? "" : size);
    return edge.in(said);
  }

  private String amount() {
    return note.amount() == null ? "" : SpokenPhrases.amount(note.amount(), phrases);
  }

  /** What to try before it is made for good; no trial that she has made already. */
  String trial(Answer answer) {
    boolean done = isProved(answer);
    if (words.next() != null && (done || isShown(answer))) {
      return words.next();
    }
    return done ? phrases.say("trial-done") : words.trial();
  }

  /** Whether what she saw tells that she has made the trial. */
  private boolean isShown(Answer answer) {
    return answer.understood().signs().stream()
        .anyMatch(one -> one.present() && words.shownBy().contains(one.id()));
  }

  String check() {
    return words.check();
  }

  /** How it is made, step by step. */
  String steps() {
    return String.join(" ", note.steps());
  }

  String id() {
    return note.id();
  }

  /** "simple", "unpick" or "recut": how it is undone. */
  String undo() {
    return note.undo();
  }

  /** Whether it makes the garment closer. */
  boolean tightens() {
    return note.tightens();
  }

  /** Whether it treats a cause. */
  boolean cures(String cause) {
    return note.cures().stream().anyMatch(one -> one.cause().equals(cause));
  }

  /** The cause that it treats best, or null. */
  String cures() {
    return note.cures().isEmpty() ? null : note.cures().get(0).cause();
  }

  /** Whether it only measures, and leaves the garment as it is. */
  boolean isMeasuring() {
    return note.stage().equals("measure");
  }

  /** Whether it names the size to cut. */
  boolean tellsSize() {
    return size != null && words.does().contains("{size}");
  }

  /** Whether its words hold a number. */
  boolean tellsNumber() {
    return does().chars().anyMatch(Character::isDigit);
  }

  /** Whether she tried it by hand, and it was right. */
  boolean isProved(Answer answer) {
    return tried(answer).anyMatch(one -> one.how() != null && RIGHT.equals(one.outcome()));
  }

  /** Whether she has made it before. */
  boolean isMadeBefore(Answer answer) {
    return tried(answer).anyMatch(one -> one.how() == null);
  }

  private Stream<TriedAsGiven> tried(Answer answer) {
    List<TriedAsGiven> tried = answer.understood().tried();
    return tried == null
        ? Stream.empty()
        : tried.stream().filter(one -> note.id().equals(one.adjustment()));
  }

  boolean isSafety() {
    return note.cures().isEmpty();
  }

  boolean isEstimated() {
    return note.amount() != null && note.amount().estimated();
  }

  boolean isSlackOnly() {
    return note.slackOnly();
  }

  /** How to find out by how much; null where that is known or a trial shows it. */
  String measureFirst() {
    return note.amount() == null && words.trial() == null ? note.measureFirst() : null;
  }

  /** How much it is at each edge; null where it is not shared among edges. */
  String each() {
    PlaceNote place = note.places().isEmpty() ? null : note.places().get(0);
    return place == null || place.each() == null || !place.shared() || isEstimated()
        ? null
        : SpokenPhrases.length(place.each().text());
  }
}
