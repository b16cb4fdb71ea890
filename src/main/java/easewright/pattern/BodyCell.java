package easewright.pattern;

import java.util.Optional;

/**
 * Some of the bodies a size is for. Girths are in millimetres.
 *
 * @param underbustMm underbust girths, empty if bust alone decides
 * @param bustMm bust girths, empty if the difference decides
 * @param differenceMm bust less underbust, empty if the bust girth decides
 */
public record BodyCell(
    Optional<Span> underbustMm, Optional<Span> bustMm, Optional<Span> differenceMm) {

  /**
   * @throws SheetRefusal unless either bust girth or difference is given, and a difference has an
   *     underbust to be counted from
   */
  public BodyCell {
    if (bustMm.isPresent() == differenceMm.isPresent()) {
      throw new SheetRefusal("size-by-both");
    }
    if (differenceMm.isPresent() && underbustMm.isEmpty()) {
      throw new SheetRefusal("size-without-underbust");
    }
  }

  /** Whether it is for a body with these girths. */
  public boolean fits(double underbust, double bust) {
    return underbustMm.map(span -> span.holds(underbust)).orElse(true)
        && bustMm.map(span -> span.holds(bust)).orElse(true)
        && differenceMm.map(span -> span.holds(bust - underbust)).orElse(true);
  }

  /** The middle of its differences; empty if bust alone decides. */
  public Optional<Double> middleDifferenceMm() {
    return differenceMm
        .map(Span::middleMm)
        .or(() -> underbustMm.map(under -> bustMm.orElseThrow().middleMm() - under.middleMm()));
  }

  /** How far girths lie from its middle, each counted in halves of its range. */
  double distance(double underbust, double bust) {
    double under = underbustMm.map(span -> off(span, underbust)).orElse(0.0);
    double across =
        bustMm
            .map(span -> off(span, bust))
            .orElseGet(() -> off(differenceMm.orElseThrow(), bust - underbust));
    return Math.max(under, across);
  }

  private static double off(Span span, double mm) {
    return Math.abs(mm - span.middleMm()) / (span.toMm() - span.fromMm()) * 2;
  }

  /** Whether it shares bodies with another; ranges that only touch do not count. */
  boolean meets(BodyCell other) {
    return meet(underbustMm, other.underbustMm)
        && meet(bustMm, other.bustMm)
        && meet(differenceMm, other.differenceMm);
  }

  private static boolean meet(Optional<Span> one, Optional<Span> other) {
    return one.isEmpty() || other.isEmpty() || one.get().meets(other.get());
  }

  /** Whether all its bodies are bodies of another. */
  boolean isWithin(BodyCell other) {
    return within(underbustMm, other.underbustMm)
        && within(bustMm, other.bustMm)
        && within(differenceMm, other.differenceMm);
  }

  private static boolean within(Optional<Span> one, Optional<Span> other) {
    return other.isEmpty() || one.isPresent() && one.get().isWithin(other.get());
  }
}
