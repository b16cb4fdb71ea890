package easewright.diagnosis;

import easewright.diagnosis.Amounts.AskedBy;
import easewright.diagnosis.Amounts.Told;
import easewright.diagnosis.Answer.Amount;
import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.inference.Posterior;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Conclusions.Cures;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How much an adjustment changes for the causes it would cure: the signs that tell most of those
 * causes come first.
 */
final class CureAmounts {
  private static final Comparator<Telling> MOST_TELLING =
      Comparator.comparingDouble(Telling::strength)
          .reversed()
          .thenComparing(one -> one.sign().id())
          .thenComparing(one -> one.sign().amount() == null ? 0 : -one.sign().amount().mm())
          .thenComparing(one -> String.valueOf(one.sign().degree()));

  private final Fitting fitting;
  private final Knowledge knowledge;
  private final Posterior posterior;
  private final Amounts amounts;

  CureAmounts(Fitting fitting, Knowledge knowledge, Posterior posterior, Amounts amounts) {
    this.fitting = fitting;
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.amounts = amounts;
  }

  /** The whole change, or what to measure to get it. */
  Told whole(AdjustmentEntry entry, List<Cures> cures) {
    return amounts.of(entry, new Asked(cures));
  }

  /** What was measured to hang loose of what this adjustment takes up; empty where nothing was. */
  Optional<Amount> slack(AdjustmentEntry entry, List<Cures> cures) {
    return amounts.slack(entry, telling(cures));
  }

  /** What was measured, however loosely; else what to try. */
  Told roughly(AdjustmentEntry entry, List<Cures> cures) {
    return amounts.roughly(entry, new Asked(cures));
  }

  /** What was changed, put back as it was made. */
  Told putBack(EarlierAdjustment last) {
    return amounts.putBack(last);
  }

  /** The most that is changed at once, of an amount above it, with what is done about the rest. */
  Amount upTo(Amount whole, double mostMm, String sentence) {
    return amounts.upTo(whole, mostMm, sentence);
  }

  /** The reported signs, and those to measure, of the causes that some cures are for. */
  private final class Asked implements AskedBy {
    private final List<Cures> cures;

    private Asked(List<Cures> cures) {
      this.cures = cures;
    }

    @Override
    public List<ReportedSign> signs() {
      return telling(cures);
    }

    @Override
    public List<ReportedSign> main() {
      double partly = knowledge.parameter("partly");
      return telling(
          cures.stream().filter(one -> knowledge.parameter(one.howMuch()) > partly).toList());
    }

    @Override
    public Optional<String> measurable(AmountMethod method) {
      String most = null;
      double strongest = 0;
      for (String sign : knowledge.signs().measuredBy(method)) {
        double strength = strength(sign, cures);
        if (strength > strongest) {
          most = sign;
          strongest = strength;
        }
      }
      return Optional.ofNullable(most);
    }
  }

  /** A reported sign with the strength of its strongest link. */
  private record Telling(ReportedSign sign, double strength) {}

  /** Reported signs the causes show as, those with the strongest link first. */
  private List<ReportedSign> telling(List<Cures> cures) {
    List<Telling> telling = new ArrayList<>();
    for (ReportedSign sign : fitting.signs()) {
      if (sign.present() && !knowledge.catalog().signs().get(sign.id()).redFlag()) {
        double strength = strength(sign.id(), cures);
        if (strength > 0) {
          telling.add(new Telling(sign, strength));
        }
      }
    }
    telling.sort(MOST_TELLING);
    return telling.stream().map(Telling::sign).toList();
  }

  private double strength(String sign, List<Cures> cures) {
    double most = 0;
    for (Cures cure : cures) {
      most = Math.max(most, posterior.network().strength(cure.cause(), sign));
    }
    return most;
  }
}
