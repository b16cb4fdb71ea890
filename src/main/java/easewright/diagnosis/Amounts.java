package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.diagnosis.Answer.Amount;
import easewright.fitting.EarlierAdjustment;
import easewright.fitting.GarmentEdge;
import easewright.fitting.ReportedSign;
import easewright.fitting.Trial;
import easewright.measure.Length;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.RuleBookSource;
import easewright.wording.Blanks;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Works out how much an adjustment changes: by what the wearer measured, by computing where the
 * numbers are known, or as a first step by the degree of the sign that asks for it. Always the
 * whole change, never half.
 */
final class Amounts {
  private static final String CLEAR = "clear";

  private final FittingNumbers numbers;
  private final RuleBookSource source;
  private final AmountWriter writer;
  private final List<Trial> trials;

  Amounts(FittingNumbers numbers) {
    this.numbers = numbers;
    this.source = numbers.source();
    this.writer = new AmountWriter(numbers.fitting().units());
    this.trials = Measure.trials(numbers);
  }

  /**
   * An amount, or what to measure to get one; both when the amount is only a first step, or when
   * two measures of it contradict each other.
   *
   * @param amount null when it cannot be told
   * @param measureFirst null when nothing more needs measuring
   * @param asItIs why nothing is to be changed, by measure; null where something is, or may be
   * @param toThePlan whether the amount brings something back to what was planned for it
   */
  record Told(Amount amount, String measureFirst, String asItIs, boolean toThePlan) {
    static final Told NOTHING = new Told(null, null, null);

    Told(Amount amount, String measureFirst, String asItIs) {
      this(amount, measureFirst, asItIs, false);
    }
  }

  /** What asks for a change. Worked out when asked for, since most amounts need little of it. */
  interface AskedBy {
    /** Reported signs of the causes it cures, the most telling first. */
    List<ReportedSign> signs();

    /** Those of causes that it cures fully or largely; only they may ask for a first step. */
    List<ReportedSign> main();

    /** The most telling sign of these causes whose amount is a method's; empty where none is. */
    Optional<String> measurable(AmountMethod method);
  }

  Told of(AdjustmentEntry adjustment, AskedBy asked) {
    AmountMethod method = method(adjustment);
    Optional<Measure> tried = Measure.tried(adjustment.id(), trials, numbers);
    if (method == AmountMethod.NONE) {
      // What states no amount still has that with which it sat right.
      return tried
          .or(() -> Measure.onlyMeasured(adjustment.id(), numbers))
          .map(one -> measured(method, one, null))
          .orElse(Told.NOTHING);
    }
    List<Measure> measures =
        new ArrayList<>(Measure.of(adjustment, method, asked.signs(), numbers));
    Measure.onlyMeasured(adjustment.id(), numbers).ifPresent(one -> measures.add(0, one));
    tried.ifPresent(one -> measures.add(0, one));
    if (measures.isEmpty()) {
      Measure.givenBack(adjustment, numbers).ifPresent(measures::add);
    }
    if (measures.isEmpty()) {
      return new Told(firstStep(adjustment, asked), measureFirst(method, asked), null);
    }
    Measure best = measures.get(0);
    String doubt = best.doubtBeside(measures, numbers);
    String first = measureFirst(method, asked);
    if (best.value() > 0 && !isSmall(best.value())) {
      // An amount as wide as itself is none, where something would tell it better.
      // What was measured or tried on the toile has told it.
      boolean loose = !best.byHand() && best.sd() > source.parameter("loose-amount") * best.value();
      return loose && first != null ? new Told(null, first, null) : measured(method, best, doubt);
    }
    // A loose measure of nought is no proof that all is well; nor is a guess to stand beside it.
    return best.value() + best.sd() < least(adjustment)
        ? new Told(null, null, asItIs(best, doubt))
        : new Told(null, first, null);
  }

  private Told measured(AmountMethod method, Measure best, String doubt) {
    String working = best.working(numbers);
    return new Told(
        writer.amount(
            method, best.worked().result(), doubt == null ? working : working + doubt, false),
        doubt == null ? null : source.wording().say("measure-both-again"),
        null,
        best.toThePlan());
  }

  private String asItIs(Measure best, String doubt) {
    double mm = Math.abs(best.value());
    String told =
        best.value() > 0
            ? source.wording().say("held-small", "value", numbers.shown().length(mm))
            : !isSmall(mm)
                ? source.wording().say("held-opposite", "value", numbers.shown().length(mm))
                : source.wording().say("held-right");
    return doubt == null ? told : told + doubt + " " + source.wording().say("measure-both-again");
  }

  /** Whether a length is less than a tape shows. */
  private boolean isSmall(double mm) {
    return numbers.shown().isMore(source.parameter("tape-shows"), mm);
  }

  /** Above this a change is worth a first step of its own. */
  private double least(AdjustmentEntry adjustment) {
    return adjustment.firstStep() == null
        ? Double.POSITIVE_INFINITY
        : Length.parse(adjustment.firstStep().get(CLEAR)).mm();
  }

  private static AmountMethod method(AdjustmentEntry adjustment) {
    return adjustment.method() == null ? AmountMethod.NONE : AmountMethod.of(adjustment.method());
  }

  /**
   * What was measured to hang loose, so that taking it up brings the garment to the body and no
   * closer; empty where nobody measured it, or nothing is loose.
   */
  Optional<Amount> slack(AdjustmentEntry adjustment, List<ReportedSign> signs) {
    List<ReportedSign> loose =
        signs.stream().filter(sign -> source.catalog().signs().get(sign.id()).slack()).toList();
    AmountMethod method = method(adjustment);
    Optional<Measure> slack =
        method.slack().isPresent()
            ? Measure.worked(method.slack().get(), numbers)
            : Measure.reported(adjustment, method, loose, numbers);
    return slack
        .filter(one -> one.value() > 0 && !isSmall(one.value()))
        .map(one -> measured(method, one, null))
        .map(Told::amount);
  }

  /**
   * What was measured, even where it is as wide as itself: a change that is made in any case goes
   * by that rather than by a guess. Where nothing was, or by measure nothing is due, what to try.
   */
  Told roughly(AdjustmentEntry adjustment, AskedBy asked) {
    AmountMethod method = method(adjustment);
    return Measure.of(adjustment, method, asked.signs(), numbers).stream()
        .filter(one -> one.value() > 0 && !isSmall(one.value()))
        .findFirst()
        .map(one -> measured(method, one, null))
        .orElseGet(() -> firstStep(adjustment));
  }

  /** What was changed, put back as it was made; nothing where nobody said by how much. */
  Told putBack(EarlierAdjustment last) {
    return last.amount() == null
        ? Told.NOTHING
        : new Told(
            writer.amount(
                AmountMethod.NONE,
                Measure.estimate(last.amount(), false, source.parameter("sign-amount-error")),
                source.wording().say("amount-put-back"),
                false),
            null,
            null);
  }

  private Told firstStep(AdjustmentEntry adjustment) {
    return new Told(step(adjustment, CLEAR), measureFirst(method(adjustment)).orElse(null), null);
  }

  /**
   * A first step, by the degree of the sign that asks for this change: one whose amount would be
   * its amount, or else the most telling sign of a cause it cures. Nothing where nobody reported
   * such a sign.
   */
  private Amount firstStep(AdjustmentEntry adjustment, AskedBy asked) {
    AmountMethod method = method(adjustment);
    return asked.signs().stream()
        .filter(sign -> Measure.answers(sign.id(), method, numbers))
        .findFirst()
        .or(() -> asked.main().stream().findFirst())
        .map(sign -> step(adjustment, Objects.requireNonNullElse(sign.degree(), CLEAR)))
        .orElse(null);
  }

  private Amount step(AdjustmentEntry adjustment, String degree) {
    if (adjustment.firstStep() == null || adjustment.firstStep().isEmpty()) {
      return null;
    }
    double mm = Length.parse(adjustment.firstStep().get(degree)).mm();
    return writer.amount(
        method(adjustment),
        new Estimate(mm, mm * source.parameter("first-step-error")),
        source.wording().say("amount-first-step", "degree", degree),
        true);
  }

  /** The one measurement that would give the amount; null where none would. */
  private String measureFirst(AmountMethod method, AskedBy asked) {
    return measureFirst(method)
        .or(
            () ->
                asked
                    .measurable(method)
                    .map(sign -> source.catalog().signs().get(sign).amount())
                    .map(what -> source.wording().say("measure-first-sign", "what", what)))
        .orElse(null);
  }

  private Optional<String> measureFirst(AmountMethod method) {
    return method
        .measureFirst(numbers)
        .map(sentence -> source.wording().say(sentence, Blanks.NONE));
  }

  /** The edge whose length gave the amount of an adjustment; empty where none did. */
  Optional<GarmentEdge> edge(AdjustmentEntry adjustment) {
    return FigureAmounts.edge(method(adjustment), numbers).map(EdgeFigure.OfEdge::edge);
  }

  /** The most that is changed at once, of an amount above it, with what is done about the rest. */
  Amount upTo(Amount whole, double mostMm, String sentence) {
    return writer.upTo(whole, mostMm, sentence);
  }

  /** The part of an amount at one edge; parts of the amount as told, so that they add up to it. */
  Amount part(Amount whole, double share) {
    return writer.part(whole, share);
  }
}
