package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.fitting.EarlierAdjustment;
import easewright.fitting.GivenAmount;
import easewright.fitting.ReportedSign;
import easewright.fitting.Trial;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Wording;
import easewright.wording.Blanks;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One way in which an amount was measured.
 *
 * @param sentence key of the sentence that tells how
 * @param worked what it gives
 * @param byHand whether the wearer measured the very sign that the change is to mend, or tried the
 *     change
 * @param toThePlan whether it brings something back to what was planned for it, no further
 */
record Measure(String sentence, Worked worked, boolean byHand, boolean toThePlan) {

  private Measure(String sentence, Worked worked, boolean byHand) {
    this(sentence, worked, byHand, false);
  }

  /**
   * Every way in which the amount of a method was measured. The wearer's own measure on the toile
   * comes before what the tape lets us compute from afar; else the smaller error comes first.
   *
   * @param signs reported signs, the most telling first
   */
  static List<Measure> of(
      AdjustmentEntry adjustment,
      AmountMethod method,
      List<ReportedSign> signs,
      FittingNumbers numbers) {
    List<Measure> measures = new ArrayList<>();
    method.formulas(numbers).forEach(formula -> worked(formula, numbers).ifPresent(measures::add));
    measures.sort(Comparator.comparingDouble(Measure::sd));
    reported(adjustment, method, signs, numbers).ifPresent(one -> measures.add(0, one));
    return measures;
  }

  static Optional<Measure> worked(Formula formula, FittingNumbers numbers) {
    return formula
        .worked(numbers)
        .map(worked -> new Measure(formula.wording(), worked, false, formula.toThePlan()));
  }

  /** The wearer's own measure of the sign that tells most. */
  static Optional<Measure> reported(
      AdjustmentEntry adjustment,
      AmountMethod method,
      List<ReportedSign> signs,
      FittingNumbers numbers) {
    return signs.stream()
        .filter(sign -> sign.amount() != null && answers(sign.id(), method, numbers))
        .filter(sign -> sign.oneSided() || !method.isOfOneSide())
        .filter(sign -> method.isMeasuredAt(sign.place()))
        .findFirst()
        .map(
            sign ->
                reported(
                    sign,
                    new MeasuredTogether(sign, signs, numbers),
                    isOfOneSide(adjustment, method, sign, numbers),
                    numbers));
  }

  /** What is measured on either side, and changed on one, is what one side has more. */
  private static boolean isOfOneSide(
      AdjustmentEntry adjustment, AmountMethod method, ReportedSign sign, FittingNumbers numbers) {
    return method.isOfOneSide() || ofOneSide(sign.id(), numbers) && !adjustment.perSide();
  }

  private static Measure reported(
      ReportedSign sign, MeasuredTogether together, boolean ofOneSide, FittingNumbers numbers) {
    Estimate found = together.amount(ofOneSide);
    SignEntry entry = numbers.source().catalog().signs().get(sign.id());
    // What it measures with nothing wrong; null for nought.
    String usual = entry.usual();
    Blanks blanks = Blanks.of("sign", entry.name()).and("said", together.said());
    if (usual == null) {
      boolean toThePlan = AmountMethod.of(entry.measures().get(0)).isToThePlan();
      return new Measure("amount-reported", new Worked(found, blanks), true, toThePlan);
    }
    double allowed = numbers.parameter(usual);
    return new Measure(
        "amount-reported-less",
        new Worked(
            new Estimate(found.value() - allowed, found.sd()),
            blanks
                .and("found", numbers.shown().length(found.value()))
                .and("usual", numbers.shown().length(allowed))),
        true);
  }

  /**
   * Half of a change that helped and went too far: it did harm of its own, as a side effect of it
   * is seen. Empty where none did, or nobody said by how much it was changed.
   */
  static Optional<Measure> givenBack(AdjustmentEntry adjustment, FittingNumbers numbers) {
    List<String> takenBack = Objects.requireNonNullElse(adjustment.givesBack(), List.of());
    return numbers.fitting().earlier().stream()
        .filter(one -> takenBack.contains(one.adjustment()) && "better".equals(one.outcome()))
        .filter(one -> one.amount() != null && wentTooFar(one.adjustment(), numbers))
        .reduce((earlier, later) -> later)
        .map(one -> givenBack(one, numbers));
  }

  private static Measure givenBack(EarlierAdjustment one, FittingNumbers numbers) {
    AdjustmentEntry change = numbers.source().catalog().adjustments().get(one.adjustment());
    double whole = estimate(one.amount(), change.perSide(), 0).value();
    // The change is not named: it may be one that tightens, where nothing tighter may be named.
    Blanks blanks = Blanks.of("whole", numbers.shown().length(whole));
    return new Measure(
        "amount-given-back",
        new Worked(
            new Estimate(
                whole * numbers.parameter("given-back"),
                whole * numbers.parameter("given-back-error")),
            blanks),
        false);
  }

  private static boolean wentTooFar(String adjustment, FittingNumbers numbers) {
    List<String> harm = numbers.source().catalog().adjustments().get(adjustment).sideEffects();
    return harm != null
        && numbers.fitting().signs().stream()
            .anyMatch(sign -> sign.present() && harm.contains(sign.id()));
  }

  /** Every trial of a fitting, told as a sign or as such. */
  static List<Trial> trials(FittingNumbers numbers) {
    Catalog catalog = numbers.source().catalog();
    return Stream.concat(
            HandTrials.of(numbers.fitting(), catalog).stream(),
            TrialSteps.together(numbers.fitting(), catalog).stream())
        .toList();
  }

  /**
   * The amount of a trial that was right: with it the fault was gone, on this body. Where none was,
   * the middle between what helped and what was too much.
   */
  static Optional<Measure> tried(String adjustment, List<Trial> trials, FittingNumbers numbers) {
    return trials.stream()
        .filter(one -> one.adjustment().equals(adjustment))
        .filter(one -> one.isRight() && one.amount() != null)
        .reduce((earlier, later) -> later)
        .map(one -> tried("amount-tried", adjustment, one.amount(), numbers))
        .or(
            () ->
                TrialSteps.between(adjustment, numbers.fitting(), numbers.source().catalog())
                    .map(range -> tried("amount-between", adjustment, range, numbers)));
  }

  /** What a gap, a mark or two lengths say that the change must be, with nothing tried. */
  static Optional<Measure> onlyMeasured(String adjustment, FittingNumbers numbers) {
    return numbers.fitting().trials().stream()
        .filter(one -> one.isOnlyMeasured() && one.adjustment().equals(adjustment))
        .reduce((earlier, later) -> later)
        .map(one -> tried("amount-only-measured", adjustment, one.amount(), numbers));
  }

  private static Measure tried(
      String sentence, String adjustment, GivenAmount amount, FittingNumbers numbers) {
    boolean perSide = numbers.source().catalog().adjustments().get(adjustment).perSide();
    return new Measure(
        sentence,
        new Worked(
            estimate(amount, perSide, numbers.parameter("sign-amount-error")),
            Blanks.of("said", said(amount, numbers))),
        true);
  }

  private static boolean ofOneSide(String sign, FittingNumbers numbers) {
    return numbers.source().catalog().signs().get(sign).perSide();
  }

  /**
   * @param perSide whether the amount of one side counts
   * @param sdMm error of measuring one length, mm
   */
  static Estimate estimate(GivenAmount amount, boolean perSide, double sdMm) {
    GivenAmount counted = perSide ? amount.onOneSide() : amount;
    return new Estimate(counted.mm(), counted.sdMm(sdMm));
  }

  /** The amount of a sign: at several places of one side they are all of that side. */
  static Estimate estimate(ReportedSign sign, boolean perSide, double sdMm) {
    return estimate(sign.amount(), perSide && !sign.oneSided(), sdMm);
  }

  /** As the wearer said it, where that is more than the sum itself. */
  private static String said(GivenAmount amount, FittingNumbers numbers) {
    Wording wording = numbers.source().wording();
    return amount.isComposed()
        ? wording.say("amount-as-said", "said", amount.text(numbers.fitting().units(), wording))
        : "";
  }

  /** Whether the amount of a sign is the amount of this method. */
  static boolean answers(String sign, AmountMethod method, FittingNumbers numbers) {
    List<String> measures = numbers.source().catalog().signs().get(sign).measures();
    return measures != null && measures.contains(method.id());
  }

  double value() {
    return worked.result().value();
  }

  double sd() {
    return worked.result().sd();
  }

  /** How it was worked out, in words. */
  String working(FittingNumbers numbers) {
    return numbers
        .source()
        .wording()
        .say(sentence, worked.blanks().and("value", numbers.shown().length(value())));
  }

  /** What another measure says, where both cannot be right; else null. */
  String doubtBeside(List<Measure> measures, FittingNumbers numbers) {
    double far = numbers.parameter("measures-contradict");
    return measures.stream()
        .filter(one -> Math.abs(one.value() - value()) > far * Math.hypot(one.sd(), sd()))
        .findFirst()
        .map(
            one ->
                numbers
                    .source()
                    .wording()
                    .say("amount-contradicted", "other", one.working(numbers)))
        .orElse(null);
  }
}
