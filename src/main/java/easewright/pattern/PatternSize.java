package easewright.pattern;

import easewright.size.Range;
import easewright.size.SizeCell;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One size of a pattern: the bodies it is for and the garment it makes.
 *
 * @param name its name in the pattern, e.g. "75B" or "S"
 * @param aliases what else it is called, as the sheet lists it
 * @param band its band label, empty for a named size without one
 * @param cup its cup label, empty for a named size without one
 * @param bodies the bodies it is for; several where one size stands for several bands and cups
 * @param finishedMm finished measurements in mm at rest, by trade term, before any choice
 */
public record PatternSize(
    String name,
    List<SizeAlias> aliases,
    Optional<String> band,
    Optional<String> cup,
    List<BodyCell> bodies,
    Map<String, Double> finishedMm) {

  /**
   * @throws IllegalArgumentException if it is for no body
   */
  public PatternSize {
    aliases = List.copyOf(aliases);
    bodies = List.copyOf(bodies);
    if (bodies.isEmpty()) {
      throw new IllegalArgumentException("A size is for some body.");
    }
    finishedMm = Map.copyOf(finishedMm);
  }

  /** Whether the size is for a body with these girths in mm. */
  public boolean fits(double underbust, double bust) {
    return bodies.stream().anyMatch(body -> body.fits(underbust, bust));
  }

  /** The bodies as cells of a chart whose sizes are named as here. */
  public List<SizeCell> cells() {
    return bodies.stream().map(this::cell).toList();
  }

  private SizeCell cell(BodyCell body) {
    return new SizeCell(
        name,
        band.orElse(name),
        cup.orElse(null),
        body.underbustMm().map(PatternSize::range).orElse(Range.ANY),
        body.bustMm().map(PatternSize::range).orElse(null),
        body.differenceMm().map(PatternSize::range).orElse(null));
  }

  private static Range range(Span span) {
    return Range.ofMm(span.fromMm(), span.toMm());
  }

  /** Underbust girths from the smallest to the largest it is for; empty if bust alone decides. */
  public Optional<Span> underbustMm() {
    List<Span> spans = bodies.stream().flatMap(body -> body.underbustMm().stream()).toList();
    return spans.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Span(
                spans.stream().mapToDouble(Span::fromMm).min().getAsDouble(),
                spans.stream().mapToDouble(Span::toMm).max().getAsDouble()));
  }

  /** The bodies of this size that are nearest to these girths in mm. */
  public BodyCell nearest(double underbust, double bust) {
    return bodies.stream()
        .min(Comparator.comparingDouble(body -> body.distance(underbust, bust)))
        .orElseThrow();
  }

  /** The mean of its differences of bust and underbust in mm; empty if bust alone decides. */
  public Optional<Double> differenceMm() {
    List<Double> middles = bodies.stream().flatMap(b -> b.middleDifferenceMm().stream()).toList();
    return middles.isEmpty()
        ? Optional.empty()
        : Optional.of(middles.stream().mapToDouble(mm -> mm).average().getAsDouble());
  }
}
