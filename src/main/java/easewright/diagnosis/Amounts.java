package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.diagnosis.Answer.Amount;
import easewright.diagnosis.Formula.Worked;
import easewright.measure.Length;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.RuleBookSource;
import easewright.wording.Blanks;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Works out how much an adjustment changes: by computing where the numbers are known, by what the
 * wearer measured, or as a first step by the degree of the sign. Always the whole change, never
 * half.
 */
final class Amounts {
  private static final List<String> DEGREES = List.of("slight", "clear", "strong");

  private final FittingNumbers numbers;
  private final RuleBookSource source;
  private final AmountWriter writer;

  Amounts(FittingNumbers numbers) {
    this.numbers = numbers;
    this.source = numbers.source();
    this.writer = new AmountWriter(numbers.fitting().units(), source.wording());
  }

  /**
   * An amount, or what to measure to get one; both when the amount is only a first step.
   *
   * @param amount null when it cannot be told
   * @param measureFirst null when nothing more needs measuring
   */
  record Told(Amount amount, String measureFirst) {}

  /**
   * @param signs the signs this change would relieve, as reported, the most telling first
   */
  Told of(AdjustmentEntry adjustment, List<ReportedSign> signs) {
    AmountMethod method = method(adjustment);
    if (method == AmountMethod.NONE) {
      return new Told(null, null);
    }
    // What was measured on the toile beats what the tape lets us compute from afar.
    Optional<Amount> told =
        reported(method, signs).or(() -> method.formula(numbers).flatMap(f -> worked(method, f)));
    if (told.isPresent()) {
      return new Told(told.get(), null);
    }
    return new Told(firstStep(adjustment, signs), measureFirst(method, signs));
  }

  private static AmountMethod method(AdjustmentEntry adjustment) {
    return adjustment.method() == null ? AmountMethod.NONE : AmountMethod.of(adjustment.method());
  }

  private Optional<Amount> worked(AmountMethod method, Formula formula) {
    return formula
        .worked(numbers)
        .flatMap(worked -> writer.positive(method, formula.wording(), worked));
  }

  /**
   * What was measured to hang loose, so that taking it up brings the garment to the body and no
   * closer; empty where nobody measured it, or nothing is loose.
   */
  Optional<Amount> slack(AdjustmentEntry adjustment, List<ReportedSign> signs) {
    List<ReportedSign> loose =
        signs.stream().filter(sign -> source.catalog().signs().get(sign.id()).slack()).toList();
    AmountMethod method = method(adjustment);
    return method.slack().isPresent()
        ? worked(method, method.slack().get())
        : reported(method, loose);
  }

  /** What to try where no number is to be trusted, or none is worth a change. */
  Told firstStep(AdjustmentEntry adjustment) {
    return new Told(firstStep(adjustment, List.of()), measureFirst(method(adjustment), List.of()));
  }

  /** The wearer's own measure of the sign that tells most. */
  private Optional<Amount> reported(AmountMethod method, List<ReportedSign> signs) {
    double sd = source.parameter("sign-amount-error");
    return signs.stream()
        .filter(sign -> sign.amount() != null && measures(sign, method))
        .findFirst()
        .flatMap(
            sign ->
                writer.positive(
                    method,
                    "amount-reported",
                    new Worked(
                        new Estimate(sign.amount().mm(), sd),
                        Blanks.of("sign", source.catalog().nameOf(sign.id())))));
  }

  private boolean measures(ReportedSign sign, AmountMethod method) {
    List<String> measures = source.catalog().signs().get(sign.id()).measures();
    return measures != null && measures.contains(method.id());
  }

  private Amount firstStep(AdjustmentEntry adjustment, List<ReportedSign> signs) {
    if (adjustment.firstStep() == null || adjustment.firstStep().isEmpty()) {
      return null;
    }
    String degree =
        signs.stream()
            .map(ReportedSign::degree)
            .filter(Objects::nonNull)
            .max(Comparator.comparingInt(DEGREES::indexOf))
            .orElse("clear");
    double mm = Length.parse(adjustment.firstStep().get(degree)).mm();
    return writer.amount(
        method(adjustment),
        new Estimate(mm, mm * source.parameter("first-step-error")),
        source.wording().say("amount-first-step", "degree", degree),
        true);
  }

  private String measureFirst(AmountMethod method, List<ReportedSign> signs) {
    if (!method.isMeasuredAsASign()) {
      return method
          .measureFirst(numbers.fitting().body())
          .map(sentence -> source.wording().say(sentence, Blanks.NONE))
          .orElse(null);
    }
    return signs.stream()
        .filter(sign -> measures(sign, method))
        .map(sign -> source.catalog().signs().get(sign.id()).amount())
        .findFirst()
        .map(what -> source.wording().say("measure-first-sign", "what", what))
        .orElse(null);
  }

  /** The part of an amount at one edge; parts of the amount as told, so that they add up to it. */
  Amount part(Amount whole, double share) {
    return writer.part(whole, share);
  }
}
