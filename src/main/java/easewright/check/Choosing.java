package easewright.check;

import easewright.check.SizeAnswer.TakeNote;
import easewright.check.SizeQuestion.Construction;
import easewright.diagnosis.Answer;
import easewright.pattern.PatternSheet;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.SizingNotes;
import easewright.rulebook.Wording;
import easewright.size.SizeCell;
import easewright.size.SizeChart;
import easewright.size.SizeEstimate;
import java.util.List;
import java.util.Locale;

/** Chooses the size to cut. If the measurements lie between two sizes, the rule book decides. */
final class Choosing {
  /** From here on a size is right more often than not. */
  private static final double EVEN_ODDS = 0.5;

  private final SizeQuestion question;
  private final Wording wording;
  private final SizingNotes sizing;
  private final boolean room;
  private final double clearShare;

  Choosing(SizeQuestion question, Answer judged, RuleBookSource book) {
    this.clearShare = book.parameter("clear-choice-of-size");
    this.question = question;
    this.wording = book.wording();
    this.sizing = book.catalog().practice().sizing();
    this.room = judged.cautions().stream().anyMatch(Answer.CautionNote::stopsTightening);
  }

  /** Whether room takes precedence, so that no size smaller than the one to take is named. */
  boolean room() {
    return room;
  }

  /** The size to take; the estimate must contain at least one. */
  TakeNote take(SizeEstimate estimate, SizeChart chart) {
    SizeCell first = estimate.chances().get(0).cell();
    if (!estimate.between(clearShare)) {
      return estimate.chances().get(0).probability() >= EVEN_ODDS
          ? note(first, "clear", "size-clear")
          : note(first, "likeliest", "size-likeliest");
    }
    SizeCell second = estimate.chances().get(1).cell();
    boolean firstIsRoomier = chart.roomier().compare(first, second) > 0;
    SizeCell larger = firstIsRoomier ? first : second;
    SizeCell smaller = firstIsRoomier ? second : first;
    SizingNotes.Between between = sizing.of(situations());
    return switch (between.take()) {
      case "larger" -> note(larger, "larger", between.says());
      case "smaller" -> note(smaller, "smaller", between.says());
      default -> note(first, "first", between.says());
    };
  }

  private TakeNote note(SizeCell size, String choice, String because) {
    return new TakeNote(
        size.id(), choice, wording.say(because), room ? wording.say("size-never-smaller") : null);
  }

  private List<String> situations() {
    Construction construction = construction();
    String made = construction == null ? "unknown" : construction.name().toLowerCase(Locale.ROOT);
    return room ? List.of("room", made) : List.of(made);
  }

  private Construction construction() {
    PatternSheet sheet = question.fitting().sheet();
    if (sheet == null) {
      return question.construction();
    }
    return sheet.cut(question.fitting().choices()).piecesWith("shaped-seam").isEmpty()
        ? Construction.COMPRESSION
        : Construction.SHAPED;
  }
}
