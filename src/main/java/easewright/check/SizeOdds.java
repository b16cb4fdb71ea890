package easewright.check;

import easewright.check.SizeAnswer.SizeNote;
import easewright.diagnosis.Answer;
import easewright.diagnosis.SizeRemarks;
import easewright.diagnosis.TapeErrors;
import easewright.measure.BodyMeasurements;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import easewright.size.Designation;
import easewright.size.SizeCell;
import easewright.size.SizeChance;
import easewright.size.SizeChart;
import easewright.size.SizeEstimate;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/** States how probable each size is, and what that assumes. */
final class SizeOdds {
  private final SizeQuestion question;
  private final SizeChart chart;
  private final RuleBookSource source;
  private final Wording wording;
  private final SizeRemarks remarks;

  SizeOdds(SizeQuestion question, SizeChart chart, RuleBookSource source) {
    this.question = question;
    this.chart = chart;
    this.source = source;
    this.wording = source.wording();
    this.remarks = new SizeRemarks(question.fitting(), chart, source);
  }

  /**
   * How probable each size is.
   *
   * @param least no smaller size than this is named; null if any may be
   */
  SizeNote note(SizeEstimate estimate, SizeCell least) {
    SizeCell best = least != null ? least : estimate.best().map(SizeChance::cell).orElse(null);
    return new SizeNote(
        question.fitting().sheet() != null
            ? question.fitting().sheet().id()
            : wording.say("system-" + question.system().name().toLowerCase(Locale.ROOT)),
        best == null ? null : new Answer.SizeChance(best.id(), estimate.probability(best.id())),
        estimate.chances().stream()
            .filter(chance -> !chance.cell().equals(best))
            .filter(chance -> chance.probability() >= source.parameter("size-neighbour"))
            .filter(chance -> least == null || chart.isAtLeast(chance.cell(), least))
            .map(SizeOdds::chance)
            .toList(),
        best == null || least != null
            ? List.of()
            : chart.sisters(best).stream()
                .map(c -> new Answer.SizeChance(c.id(), estimate.probability(c.id())))
                .toList(),
        estimate.outside(),
        best == null ? 0 : sum(estimate, cell -> cell.band().equals(best.band())),
        best == null || best.cup() == null
            ? null
            : sum(estimate, cell -> best.cup().equals(cell.cup())),
        estimate.between(source.parameter("clear-choice-of-size")),
        question.fitting().sheet() != null || best == null || least != null ? null : letter(best),
        remarks.alsoCalled(best == null ? null : best.id()),
        least != null || best == null ? null : remarks.shared(),
        remarks.hint(),
        assumed());
  }

  /** Why the plain rule gives other letters than the recommended size; null where it does not. */
  private String letter(SizeCell best) {
    BodyMeasurements body = question.fitting().body();
    return question
        .system()
        .of(body.underbust().value(), body.bust().value())
        .map(Designation::label)
        .filter(label -> !label.equals(best.id()))
        .map(label -> wording.say("size-letter-differs", "label", label, "size", best.id()))
        .orElse(null);
  }

  private static double sum(SizeEstimate estimate, Predicate<SizeCell> of) {
    return estimate.chances().stream()
        .filter(chance -> of.test(chance.cell()))
        .mapToDouble(SizeChance::probability)
        .sum();
  }

  private static Answer.SizeChance chance(SizeChance chance) {
    return new Answer.SizeChance(chance.cell().id(), chance.probability());
  }

  private Answer.TapeErrorNote assumed() {
    return TapeErrors.of(question.fitting(), wording);
  }
}
