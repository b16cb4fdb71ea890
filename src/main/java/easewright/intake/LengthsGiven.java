package easewright.intake;

import easewright.number.Amount;
import easewright.number.AmountRead;
import easewright.number.TextSpan;
import easewright.reading.LengthSaid;
import easewright.reading.LengthSaid.Counts;
import easewright.reading.TrainedReading;
import easewright.rulebook.Catalog.AdjustmentEntry;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;

/** The lengths of one text that give amounts of changes, and what each comes to. */
final class LengthsGiven {
  /** From here on the model takes a length for the amount of some change. */
  private static final double OF_ANY = 0.4;

  /** A change that nothing asks for is so much less likely. */
  private static final double UNASKED = 0.15;

  /** Two ratios this near are the same. */
  private static final double NEARLY = 0.05;

  /** A length that the text gives for a change. */
  record Given(String change, double sure, AmountRead amount, TextSpan span) {
    /** Whether this amount is the other one, or half or twice as much: told of the same length. */
    boolean isOf(AmountRead other) {
      double ratio = other.mm() / amount.mm();
      return DoubleStream.of(0.25, 0.5, 1, 2, 4).anyMatch(one -> Math.abs(ratio - one) < NEARLY);
    }
  }

  private final Map<String, AdjustmentEntry> adjustments;
  private final double mostMm;
  private final Map<Integer, Amount> byPlace = new HashMap<>();
  private final TrainedReading model;
  private final Predicate<String> aimed;

  /**
   * @param mostMm no change is larger
   * @param aimed whether something that the text complains of asks for a change
   */
  LengthsGiven(
      List<Amount> amounts,
      TrainedReading model,
      Predicate<String> aimed,
      Map<String, AdjustmentEntry> adjustments,
      double mostMm) {
    this.adjustments = adjustments;
    this.mostMm = mostMm;
    amounts.forEach(one -> byPlace.put(one.span().from(), one));
    this.model = model;
    this.aimed = aimed;
  }

  /** In the order of the text; of two that are compared the later one. */
  List<Given> all() {
    List<Given> found = new ArrayList<>();
    LengthSaid before = null;
    for (LengthSaid said : model.lengths()) {
      Amount amount = byPlace.get(said.at().from());
      if (amount == null || said.ofAny() < OF_ANY) {
        continue;
      }
      if (!said.counts().isOfTwo()) {
        String change = likeliest(said::of);
        counted(amount, said.counts(), change)
            .ifPresent(one -> found.add(given(change, said::of, said.ofAny(), one, amount)));
      } else if (before == null) {
        before = said;
      } else {
        LengthSaid other = before;
        before = null;
        ToDoubleFunction<String> both = id -> Math.sqrt(said.of(id) * other.of(id));
        double any = Math.min(said.ofAny(), other.ofAny());
        difference(byPlace.get(other.at().from()), amount, said.counts())
            .ifPresent(one -> found.add(given(likeliest(both), both, any, one, amount)));
      }
    }
    return found;
  }

  private String likeliest(ToDoubleFunction<String> of) {
    return model.settings().amounts().stream()
        .filter(adjustments::containsKey)
        .max(Comparator.comparingDouble(id -> weighed(id, of)))
        .orElseThrow();
  }

  /** A change that nothing asks for leaves its share to the others. */
  private double weighed(String change, ToDoubleFunction<String> of) {
    return of.applyAsDouble(change) * (aimed.test(change) ? 1 : UNASKED);
  }

  private Given given(
      String change, ToDoubleFunction<String> of, double any, AmountRead one, Amount amount) {
    double all = model.settings().amounts().stream().mapToDouble(id -> weighed(id, of)).sum();
    double alike = model.settings().alike(change).stream().mapToDouble(id -> weighed(id, of)).sum();
    return new Given(change, any * alike / all, one, amount.span());
  }

  /** What lies between two lengths, a bare number being in the unit of the other. */
  private Optional<AmountRead> difference(Amount one, Amount two, Counts counts) {
    String unit = one.unit() == null ? two.unit() : one.unit();
    if (unit == null) {
      return Optional.empty();
    }
    double apart = Math.abs(one.mm(unit) - two.mm(unit));
    double mm = counts == Counts.TWICE_PAIR ? apart / 2 : apart;
    return mm > 0 && mm <= mostMm
        ? Optional.of(new AmountRead(Math.round(mm) + " mm", null, 1))
        : Optional.empty();
  }

  /** As the change counts it: in all, or that of one side. */
  private Optional<AmountRead> counted(Amount amount, Counts counts, String change) {
    if (!amount.isLength() || amount.mm("mm") > mostMm || counts == Counts.OTHER) {
      return Optional.empty();
    }
    Amount all =
        switch (counts) {
          case HALF -> amount.doubled();
          case QUARTER -> amount.doubled().doubled();
          case TWICE -> adjustments.get(change).perSide() ? amount.halved() : amount;
          default -> amount;
        };
    return Optional.of(AmountRead.of(all, "mm", 1));
  }
}
