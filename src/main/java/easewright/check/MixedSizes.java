package easewright.check;

import easewright.check.SizeAnswer.MixedNote;
import easewright.check.SizeAnswer.SeamNote;
import easewright.fitting.Fitting;
import easewright.pattern.Cut;
import easewright.pattern.Edge;
import easewright.pattern.Layer;
import easewright.pattern.Piece;
import easewright.rulebook.Wording;
import easewright.size.Range;
import easewright.size.SizeCell;
import easewright.size.SizeChart;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Finds two sizes to combine if no single one fits both the band and the bust. */
final class MixedSizes {
  private final SizeChart chart;
  private final Wording wording;

  MixedSizes(SizeChart chart, Wording wording) {
    this.chart = chart;
    this.wording = wording;
  }

  /** The two sizes and where to blend them; empty if the chart has no such pair. */
  Optional<MixedNote> of(Fitting fitting) {
    double under = fitting.body().underbust().value().mm();
    double bust = fitting.body().bust().value().mm();
    Optional<SizeCell> lower =
        chart.cells().stream()
            .filter(cell -> cell.underbust().contains(under))
            .min(Comparator.comparingDouble(cell -> off(cell.bustGirths(), bust)));
    Optional<SizeCell> upper =
        chart.cells().stream()
            .filter(cell -> cell.bustGirths().contains(bust))
            .min(
                Comparator.comparingDouble((SizeCell cell) -> off(cell.underbust(), under))
                    .thenComparingDouble(cell -> off(cell.bustGirths(), bust)));
    if (lower.isEmpty() || upper.isEmpty() || lower.get().id().equals(upper.get().id())) {
      return Optional.empty();
    }
    List<SeamNote> seams = seams(fitting);
    String says =
        wording.say(
            seams.isEmpty() ? "size-mixed" : "size-mixed-seams",
            "lower",
            lower.get().id(),
            "upper",
            upper.get().id());
    long steps = chart.bandsApart(lower.get(), upper.get());
    return Optional.of(
        new MixedNote(
            lower.get().id(),
            upper.get().id(),
            seams,
            says,
            steps > 1 ? wording.say("size-mixed-far", "steps", steps) : null));
  }

  /** Upright seams of the main layer that cross the bust, where a cutting line can change size. */
  private static List<SeamNote> seams(Fitting fitting) {
    List<SeamNote> seams = new ArrayList<>();
    if (fitting.sheet() != null) {
      Cut cut = fitting.sheet().cut(fitting.choices());
      for (Piece piece : cut.pieces()) {
        for (Edge edge : piece.edges()) {
          if (piece.layer() == Layer.MAIN && edge.crosses().contains("bust")) {
            seams.add(new SeamNote(piece.name(), edge.id().replace('-', ' ')));
          }
        }
      }
    }
    return seams;
  }

  private static double off(Range range, double mm) {
    return Math.abs((range.loMm() + range.hiMm()) / 2 - mm);
  }
}
