package easewright.diagnosis;

import easewright.body.CupGeometry;
import easewright.cloth.Estimate;
import easewright.diagnosis.Answer.Amount;
import easewright.measure.Measured;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.facts.Figure;
import java.util.Map;
import java.util.Optional;

/** How much more or less room both cups take, from the girths and a spherical cap. */
final class CupAmounts {
  private final Fitting fitting;
  private final Draft draft;
  private final Map<String, Figure> figures;
  private final RuleBookSource source;
  private final AmountWriter writer;
  private final UnitFormatter shown;

  CupAmounts(
      Fitting fitting,
      Draft draft,
      Map<String, Figure> figures,
      RuleBookSource source,
      AmountWriter writer) {
    this.fitting = fitting;
    this.draft = draft;
    this.figures = figures;
    this.source = source;
    this.writer = writer;
    this.shown = new UnitFormatter(fitting.units());
  }

  /**
   * The girth to change by, with what the seam over the apex and the depth change along with it.
   *
   * @param way +1 to add, −1 to take away
   */
  Optional<Amount> change(String method, int way, String sentence) {
    return Optional.ofNullable(figures.get("cup-shortfall"))
        .flatMap(
            f -> {
              double girth = way * f.value();
              return writer.positive(
                  method,
                  new Estimate(girth, f.sd()),
                  sentence,
                  "shortfall",
                  shown.length(girth),
                  "shares",
                  shapedEdges(),
                  "arc",
                  shown.length(girth * CupGeometry.arcPerDifference()),
                  "depth",
                  depth(girth));
            });
  }

  private int shapedEdges() {
    int usual = (int) source.parameter("usual-shaped-edges");
    return draft
        .cut()
        .map(
            cut ->
                cut.share(1, "shaped-seam").stream()
                    .filter(share -> !share.copy())
                    .mapToInt(share -> share.piece().occurrences())
                    .sum())
        .filter(n -> n > 0)
        .orElse(usual);
  }

  /** How far a cup's depth changes with its girth, in words; nothing where the base is unknown. */
  private String depth(double girthMm) {
    Measured width = fitting.body().bustPointWidth();
    Figure difference = figures.get("bust-difference");
    if (width == null || difference == null || !(difference.value() > 0)) {
      return "";
    }
    double base = width.value().mm() * source.parameter("cup-base-share");
    try {
      double perMm = CupGeometry.fromDifference(base, difference.value()).projectionPerDifference();
      return source.wording().say("amount-cup-depth", "depth", shown.length(girthMm * perMm));
    } catch (IllegalArgumentException outsideTheModel) {
      // Too deep for a cap on this base: no depth is better than a wrong one.
      return "";
    }
  }
}
