package easewright.pattern;

import java.util.Map;
import java.util.Optional;

/**
 * One size of a pattern: the bodies it is for and the garment it makes.
 *
 * @param name its name in the pattern, e.g. "75B" or "S"
 * @param band its band label, empty for a named size without one
 * @param cup its cup label, empty for a named size without one
 * @param underbustMm underbust girths it is for
 * @param bustMm bust girths it is for, empty if it is defined by difference
 * @param differenceMm bust minus underbust it is for, empty if it is defined by bust girth
 * @param finishedMm finished measurements in mm at rest, by trade term, before any choice
 */
public record PatternSize(
    String name,
    Optional<String> band,
    Optional<String> cup,
    Span underbustMm,
    Optional<Span> bustMm,
    Optional<Span> differenceMm,
    Map<String, Double> finishedMm) {

  /**
   * @throws IllegalArgumentException unless it is defined by either bust girth or difference
   */
  public PatternSize {
    if (bustMm.isPresent() == differenceMm.isPresent()) {
      throw new SheetRefusal("size-by-both");
    }
    finishedMm = Map.copyOf(finishedMm);
  }

  /** Whether the size is for a body with these girths in mm. */
  public boolean fits(double underbust, double bust) {
    return underbustMm.holds(underbust)
        && bustMm.map(span -> span.holds(bust)).orElse(true)
        && differenceMm.map(span -> span.holds(bust - underbust)).orElse(true);
  }
}
