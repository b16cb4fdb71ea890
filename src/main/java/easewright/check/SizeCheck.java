package easewright.check;

import easewright.check.SizeAnswer.MixedNote;
import easewright.check.SizeAnswer.TakeNote;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.MeasureAgainNote;
import easewright.diagnosis.Diagnosis;
import easewright.diagnosis.SizeRemarks;
import easewright.fitting.Fitting;
import easewright.measure.Measured;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import easewright.size.SizeCell;
import easewright.size.SizeChart;
import easewright.size.SizeEstimate;
import java.util.List;

/** Determines the size to cut. Immutable and thread-safe. */
public final class SizeCheck {
  private final Diagnosis diagnosis;
  private final RuleBookSource source;
  private final Wording wording;

  public SizeCheck(RuleBook book, Diagnosis diagnosis) {
    this.diagnosis = diagnosis;
    this.source = book.source();
    this.wording = source.wording();
  }

  /** Finds the size, its uncertainty, and what would reduce it. */
  public SizeAnswer answer(SizeQuestion question) {
    Fitting fitting = question.fitting();
    Answer judged = diagnosis.answer(fitting);
    if (judged.isDanger()) {
      return SizeAnswer.ofDanger(judged);
    }
    Conversion conversion = new Conversion(fitting, wording);
    Measured bust = fitting.body().bust();
    Measured under = fitting.body().underbust();
    SizeAnswer.ConvertedNote converted =
        question.label().isEmpty() && question.labelOnSheet().isEmpty()
            ? null
            : conversion.converted(question);
    if (!question.hasGirths()) {
      return new SizeAnswer(
          judged.ruleBook(),
          judged.understood(),
          judged.cautions(),
          judged.notNow(),
          null,
          null,
          null,
          null,
          new Doubts(source).again(question, judged),
          List.of(),
          List.of(),
          converted);
    }
    SizeChart chart = question.chart();
    SizeEstimate estimate = chart.estimate(bust, under);
    boolean offChart = estimate.outside() >= source.parameter("mixed-sizes-from");
    MixedNote mixed =
        offChart && !chart.goesByBustAlone()
            ? new MixedSizes(chart, wording).of(fitting).orElse(null)
            : null;
    Doubts doubts = new Doubts(source);
    boolean doubtful = doubts.isKnown(fitting);
    List<MeasureAgainNote> again = doubts.again(question, judged);
    boolean reached = !offChart && !doubtful && estimate.best().isPresent();
    Choosing choosing = new Choosing(question, judged, source);
    TakeNote take = reached ? choosing.take(estimate, chart) : null;
    SizeCell least =
        take == null || !choosing.room() ? null : chart.cell(take.size()).orElseThrow();
    return new SizeAnswer(
        judged.ruleBook(),
        judged.understood(),
        judged.cautions(),
        judged.notNow(),
        new SizeOdds(question, chart, source).note(named(estimate, take, choosing.room()), least),
        take,
        mixed,
        new SizeRemarks(fitting, chart, source).sides(),
        again,
        // A girth known to be off is measured again whatever a better tape would be worth.
        doubtful ? List.of() : new SharpenNotes(source).of(fitting, chart),
        // The labels for these exact girths may be smaller than a size chosen for room.
        choosing.room() || under == null
            ? List.of()
            : conversion.labels(under.value().mm(), bust.value().mm()),
        converted);
  }

  /** No size is named where none is to be cut and room comes first: any may be too small. */
  private static SizeEstimate named(SizeEstimate estimate, TakeNote take, boolean room) {
    return take == null && room ? new SizeEstimate(List.of(), estimate.outside()) : estimate;
  }
}
