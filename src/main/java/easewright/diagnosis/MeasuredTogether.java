package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.fitting.GivenAmount;
import easewright.fitting.ReportedSign;
import easewright.measure.UnitSystem;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What a sign measures that was measured on either side, or at several places, in reports of their
 * own.
 */
final class MeasuredTogether {
  private static final String LEFT = "left";
  private static final String RIGHT = "right";

  private final SignEntry sign;
  private final List<ReportedSign> reports;
  private final FittingNumbers numbers;
  private final double sd;

  /**
   * @param first the report that tells most
   * @param all everything reported; what was measured of the same sign at the same time counts
   */
  MeasuredTogether(ReportedSign first, List<ReportedSign> all, FittingNumbers numbers) {
    this.sign = numbers.source().catalog().signs().get(first.id());
    this.numbers = numbers;
    this.sd = numbers.parameter("sign-amount-error");
    this.reports = new ArrayList<>(List.of(first));
    all.stream()
        .filter(one -> one != first && one.id().equals(first.id()) && one.present())
        .filter(one -> one.amount() != null && one.when().equals(first.when()))
        .filter(one -> reports.stream().noneMatch(other -> isSameSpot(one, other)))
        .forEach(reports::add);
  }

  private static boolean isSameSpot(ReportedSign one, ReportedSign other) {
    boolean otherSide = one.oneSided() && other.oneSided() && !one.side().equals(other.side());
    boolean otherPlace =
        one.place() != null && other.place() != null && !one.place().equals(other.place());
    return !otherSide && !otherPlace;
  }

  /** The amount of one side, or of the whole; of a change to one side, what that side has more. */
  Estimate amount(boolean ofOneSide) {
    Optional<ReportedSign> left = on(LEFT);
    Optional<ReportedSign> right = on(RIGHT);
    if (left.isPresent() && right.isPresent() && (ofOneSide || sign.perSide())) {
      Estimate one = of(left.get());
      Estimate other = of(right.get());
      double error = Math.hypot(one.sd(), other.sd());
      double more = Math.abs(one.value() - other.value());
      if (ofOneSide) {
        return new Estimate(more, error);
      }
      // Sides that differ are alike as far as the smaller goes; the rest is left to one of them.
      return more > error
          ? (one.value() < other.value() ? one : other)
          : new Estimate((one.value() + other.value()) / 2, error / 2);
    }
    return addsUp()
        ? reports.stream()
            .map(this::of)
            .reduce((a, b) -> new Estimate(a.value() + b.value(), Math.hypot(a.sd(), b.sd())))
            .orElseThrow()
        : of(reports.get(0));
  }

  /** As it was said; empty where one plain length was. */
  String said() {
    UnitSystem units = numbers.fitting().units();
    Wording wording = numbers.source().wording();
    List<GivenAmount> amounts =
        (addsUp() || on(LEFT).isPresent() && on(RIGHT).isPresent()
                ? reports
                : reports.subList(0, 1))
            .stream().map(ReportedSign::amount).toList();
    return amounts.size() == 1 && !amounts.get(0).isComposed()
        ? ""
        : wording.say(
            "amount-as-said",
            "said",
            amounts.stream()
                .map(amount -> amount.text(units, wording))
                .collect(Collectors.joining(wording.say("amount-and"))));
  }

  /** Whether places add up: what is spare or lacking around the body, not along one edge. */
  private boolean addsUp() {
    return reports.size() > 1
        && !sign.perSide()
        && sign.measures().stream().map(AmountMethod::of).anyMatch(AmountMethod::splits);
  }

  private Optional<ReportedSign> on(String side) {
    return reports.stream().filter(one -> side.equals(one.side())).findFirst();
  }

  private Estimate of(ReportedSign report) {
    return Measure.estimate(report, sign.perSide(), sd);
  }
}
