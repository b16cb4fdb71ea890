package easewright.plan;

import easewright.measure.UnitSystem;
import easewright.pattern.Trim;
import easewright.plan.CutPlan.Amount;
import easewright.plan.CutPlan.Supply;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Elastics, straps and hardware, with their lengths and how these are calculated. */
record Supplies(List<Trim> trims, UnitSystem units, Wording wording) {
  private static final double SAME_MM = 0.05;

  /**
   * Every supply, or only those the changes alter.
   *
   * @param before finished measurements in mm before any change
   */
  List<Supply> list(Map<String, Double> before, AppliedChanges changes, boolean changedOnly) {
    Map<String, Double> after = changes.finishedMm(before);
    List<Supply> supplies = new ArrayList<>();
    for (Trim trim : trims) {
      Double was = trim.lengthMm(before).orElse(null);
      Double mm = trim.lengthMm(after).map(length -> length + changes.elasticMm(trim)).orElse(null);
      boolean changed = was != null && Math.abs(mm - was) > SAME_MM;
      if (changed || !changedOnly) {
        supplies.add(supply(trim, mm, changed ? was : null, after));
      }
    }
    return supplies;
  }

  private Supply supply(Trim trim, Double mm, Double was, Map<String, Double> finished) {
    return new Supply(
        trim.id(),
        trim.name(),
        trim.kind(),
        trim.widthMm().map(width -> Texts.amount(width, units)).orElse(null),
        trim.times(),
        amount(mm),
        mm == null ? null : Texts.amount(mm * trim.times(), units),
        amount(was),
        working(trim, mm, finished),
        trim.places().stream().map(Object::toString).map(Texts::words).toList(),
        trim.leftOut().orElse(null));
  }

  private String working(Trim trim, Double mm, Map<String, Double> finished) {
    return mm == null
        ? wording.say("plan-supply-counted", "count", trim.times())
        : trim.of().isEmpty()
            ? wording.say("plan-supply-fixed", "each", Texts.amount(mm, units).text())
            : wording.say(
                "plan-supply-working",
                "percent",
                Math.round(trim.fraction() * 100),
                "of",
                measurement(trim.of().orElseThrow()),
                "value",
                Texts.amount(finished.get(trim.of().get()), units).text(),
                "plus",
                Texts.amount(trim.plusMm(), units).text(),
                "more",
                more(mm - trim.lengthMm(finished).orElseThrow()),
                "each",
                Texts.amount(mm, units).text());
  }

  private String more(double mm) {
    return Math.abs(mm) <= SAME_MM
        ? ""
        : wording.say("plan-supply-changed", "more", Texts.amount(mm, units).text());
  }

  private Amount amount(Double mm) {
    return mm == null ? null : Texts.amount(mm, units);
  }

  /** "backNeckline" in words. */
  private static String measurement(String key) {
    return key.replaceAll("([a-z])([A-Z])", "$1 $2").toLowerCase(java.util.Locale.ROOT);
  }
}
