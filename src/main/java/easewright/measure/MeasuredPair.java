package easewright.measure;

import easewright.wording.Blanks;
import java.util.Map;
import java.util.Optional;

/** The usual relation between two measurements, and the remark if they violate it. */
final class MeasuredPair {
  private final MeasuredRange first;
  private final MeasuredRange second;
  private final boolean ratio;
  private final double low;
  private final double high;
  private final Measures.Comparison written;
  private final Map<String, String> sentences;

  MeasuredPair(
      Measures.Comparison written,
      MeasuredRange first,
      MeasuredRange second,
      Map<String, String> sentences) {
    this.first = first;
    this.second = second;
    this.ratio = written.as().equals("ratio");
    this.low = number(written.low());
    this.high = number(written.high());
    this.written = written;
    this.sentences = sentences;
  }

  private double number(String text) {
    return ratio ? Double.parseDouble(text) : Length.parse(text).mm();
  }

  /** Whether it relates these two measurements, given by wire name. */
  boolean isOf(String one, String other) {
    return first.id().equals(one) && second.id().equals(other);
  }

  boolean samePairAs(MeasuredPair other) {
    return isOf(other.first.id(), other.second.id());
  }

  /** A remark if both were measured, both are possible, and their relation is unusual. */
  Optional<Remark> remark(BodyMeasurements body) {
    Optional<Measured> one = first.possible(body);
    Optional<Measured> two = second.possible(body);
    if (one.isEmpty() || two.isEmpty()) {
      return Optional.empty();
    }
    double mm = one.get().value().mm();
    double seen = ratio ? mm / two.get().value().mm() : mm - two.get().value().mm();
    if (seen >= low && seen <= high) {
      return Optional.empty();
    }
    UnitSystem system = one.get().system();
    Blanks blanks =
        Blanks.of("first", first.name())
            .and("second", second.name())
            .and("seen", text(seen, system))
            .and("low", text(low, system))
            .and("high", text(high, system))
            .and("slip", seen < low ? written.slipWhenLow() : written.slipWhenHigh());
    return Optional.of(
        new Remark(
            first.id(),
            Remark.Kind.UNLIKELY,
            blanks.fill(
                sentences.get("measure-" + written.as() + (written.surveyed() ? "" : "-usual"))),
            blanks.fill(sentences.get("measure-comparison-remedy"))));
  }

  private String text(double number, UnitSystem system) {
    return ratio ? Rounded.fixed(number, 3) : Length.ofMm(number).text(system);
  }
}
