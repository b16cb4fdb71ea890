package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.diagnosis.Answer.Amount;
import easewright.measure.Length;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.facts.Figure;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Works out how much an adjustment changes: by computing where the numbers are known, by what the
 * wearer measured, or as a first step by the degree of the sign. Always the whole change, never
 * half.
 */
final class Amounts {
  private static final List<String> DEGREES = List.of("slight", "clear", "strong");

  private final Fitting fitting;
  private final RuleBookSource source;
  private final AmountWriter writer;
  private final ComputedAmounts computed;

  Amounts(Fitting fitting, Draft draft, Map<String, Figure> figures, RuleBookSource source) {
    this.fitting = fitting;
    this.source = source;
    this.writer = new AmountWriter(fitting.units(), source.wording());
    this.computed = new ComputedAmounts(fitting, draft, figures, source, writer);
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
    if (adjustment.method() == null || adjustment.method().equals("none")) {
      return new Told(null, null);
    }
    // What was measured on the toile beats what the tape lets us compute from afar.
    Optional<Amount> told =
        reported(adjustment.method(), signs).or(() -> computed.of(adjustment.method()));
    if (told.isPresent()) {
      return new Told(told.get(), null);
    }
    return new Told(firstStep(adjustment, signs), measureFirst(adjustment.method(), signs));
  }

  /**
   * What was measured to hang loose, so that taking it up brings the garment to the body and no
   * closer; empty where nobody measured it, or nothing is loose.
   */
  Optional<Amount> slack(AdjustmentEntry adjustment, List<ReportedSign> signs) {
    List<ReportedSign> loose =
        signs.stream().filter(sign -> source.catalog().signs().get(sign.id()).slack()).toList();
    return adjustment.method().equals("band take-in")
        ? computed.slackOfTheBand()
        : reported(adjustment.method(), loose);
  }

  /** What to try where no number is to be trusted, or none is worth a change. */
  Told firstStep(AdjustmentEntry adjustment) {
    return new Told(firstStep(adjustment, List.of()), measureFirst(adjustment.method(), List.of()));
  }

  /** The wearer's own measure of the sign that tells most. */
  private Optional<Amount> reported(String method, List<ReportedSign> signs) {
    double sd = source.parameter("sign-amount-error");
    return signs.stream()
        .filter(sign -> sign.amount() != null && measures(sign, method))
        .findFirst()
        .flatMap(
            sign ->
                writer.positive(
                    method,
                    new Estimate(sign.amount().mm(), sd),
                    "amount-reported",
                    "sign",
                    source.catalog().nameOf(sign.id())));
  }

  private boolean measures(ReportedSign sign, String method) {
    List<String> measures = source.catalog().signs().get(sign.id()).measures();
    return measures != null && measures.contains(method);
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
        adjustment.method(),
        new Estimate(mm, mm * source.parameter("first-step-error")),
        source.wording().say("amount-first-step", "degree", degree),
        true);
  }

  private String measureFirst(String method, List<ReportedSign> signs) {
    boolean girths = fitting.body().bust() != null && fitting.body().underbust() != null;
    return switch (method) {
      case "band take-in", "band let-out" ->
          source
              .wording()
              .say(
                  fitting.body().underbust() == null
                      ? "measure-first-body"
                      : "measure-first-underband");
      case "elastic cut length" -> source.wording().say("measure-first-elastic");
      case "cup girth", "cup girth less" ->
          girths ? null : source.wording().say("measure-first-body");
      case "front length", "front length less" -> source.wording().say("measure-first-length");
      default ->
          signs.stream()
              .filter(sign -> measures(sign, method))
              .map(sign -> source.catalog().signs().get(sign.id()).amount())
              .findFirst()
              .map(what -> source.wording().say("measure-first-sign", "what", what))
              .orElse(null);
    };
  }

  /** The part of an amount at one edge; parts of the amount as told, so that they add up to it. */
  Amount part(Amount whole, double share) {
    return writer.part(whole, share);
  }
}
