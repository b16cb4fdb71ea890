package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.diagnosis.Answer.Amount;
import easewright.measure.Length;
import easewright.measure.UnitSystem;

/** Writes amounts in the asker's units, with their error and their working. */
final class AmountWriter {
  private final UnitSystem units;
  private final UnitFormatter shown;
  private Amount lastWhole;
  private double lastToldMm;

  AmountWriter(UnitSystem units) {
    this.units = units;
    this.shown = new UnitFormatter(units);
  }

  /** The largest length no longer than this one whose text says no more than it; 0 for none. */
  static double shownAtMost(double mm, UnitFormatter shown) {
    for (double less = mm; less > 0; less -= 1) {
      if (told(shown.length(less)) <= mm) {
        return less;
      }
    }
    return 0;
  }

  private static double told(String text) {
    return UnitFormatter.mm(text);
  }

  /** An amount with its working told. */
  Amount amount(AmountMethod method, Estimate estimate, String working, boolean estimated) {
    return new Amount(
        shown.length(estimate.value()),
        tenth(estimate.value()),
        tenth(estimate.sd()),
        shown.length(estimate.sd()),
        method.id(),
        working,
        estimated);
  }

  /** The part of an amount at one edge; parts of the amount as told, so that they add up to it. */
  Amount part(Amount whole, double share) {
    if (whole != lastWhole) {
      lastWhole = whole;
      lastToldMm = told(whole.text());
    }
    double told = lastToldMm;
    return new Amount(
        Length.ofMm(told * share).markedText(units),
        tenth(told * share),
        tenth(whole.plusMinusMm() * share),
        shown.length(whole.plusMinusMm() * share),
        whole.method(),
        whole.working(),
        whole.estimated());
  }

  /** The most that is changed at once, of an amount above it, with what is done about the rest. */
  Amount upTo(Amount whole, double mostMm, String sentence) {
    return new Amount(
        shown.length(mostMm),
        tenth(mostMm),
        whole.plusMinusMm(),
        whole.plusMinus(),
        whole.method(),
        whole.working() + sentence,
        whole.estimated());
  }

  private static double tenth(double mm) {
    return Math.round(mm * 10) / 10.0;
  }
}
