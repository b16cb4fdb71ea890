package easewright.plan;

import easewright.measure.UnitSystem;
import easewright.pattern.Cut;
import easewright.pattern.Edge;
import easewright.pattern.Layer;
import easewright.pattern.Piece;
import easewright.plan.CutPlan.Needle;
import easewright.plan.CutPlan.Stitch;
import easewright.rulebook.SewingNotes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Needles and stitches for the pieces cut, as the rule book lists them. */
final class Sewing {
  private static final String SEAMS = "seams";
  private static final String LAYERS = "layers";

  private final SewingNotes notes;

  Sewing(SewingNotes notes) {
    this.notes = notes;
  }

  /** Needles, the one for this weight of cloth first. */
  List<Needle> needles(boolean heavy) {
    return notes.needles().stream()
        .sorted(Comparator.comparing(line -> line.heavy() != heavy))
        .map(line -> new Needle(line.needle(), line.use(), line.source()))
        .toList();
  }

  /** The stitches that these pieces need, with the length of their seams if known. */
  List<Stitch> stitches(Cut cut, Map<String, Double> finishedMm, UnitSystem units) {
    List<Stitch> stitches = new ArrayList<>();
    for (SewingNotes.Stitch line : notes.stitches()) {
      List<Sewn> sewn = sewn(line, cut);
      double edgesMm = sewn.stream().mapToDouble(one -> one.mm(finishedMm)).sorted().sum();
      // Each seam joins two edges, and both are drawn.
      double mm = SEAMS.equals(line.at()) ? edgesMm / 2 : edgesMm;
      if (!sewn.isEmpty()) {
        stitches.add(
            new Stitch(
                line.use(),
                line.iso4915(),
                line.name(),
                line.home(),
                line.stretch(),
                mm == 0 ? null : Texts.amount(mm, units),
                mm == 0 ? null : Texts.thread(mm * line.thread(), units),
                line.source()));
      }
    }
    return stitches;
  }

  private record Sewn(Piece piece, Edge edge) {

    double mm(Map<String, Double> finishedMm) {
      return edge.length().map(finishedMm::get).orElse(0.0) * edge.part() * piece.occurrences();
    }

    boolean finished(List<String> words) {
      return edge.finish().filter(finish -> words.stream().anyMatch(finish::contains)).isPresent();
    }
  }

  private static List<Sewn> sewn(SewingNotes.Stitch stitch, Cut cut) {
    boolean layers = LAYERS.equals(stitch.at());
    return cut.pieces().stream()
        .flatMap(piece -> piece.edges().stream().map(edge -> new Sewn(piece, edge)))
        .filter(one -> (one.piece().layer() != Layer.MAIN) == layers)
        .filter(
            one ->
                layers
                    || (SEAMS.equals(stitch.at())
                        ? !cut.partners(one.edge()).isEmpty()
                        : one.finished(stitch.finish())))
        .toList();
  }
}
