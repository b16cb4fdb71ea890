package easewright.plan;

import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.measure.UnitSystem;
import easewright.pattern.Cut;
import easewright.pattern.Edge;
import easewright.pattern.Layer;
import easewright.pattern.Piece;
import easewright.plan.CutPlan.Needle;
import easewright.plan.CutPlan.Stitch;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Needles and stitches, as {@code easewright/plan/sewing.yaml} lists them. */
final class Sewing {

  private record NeedleLine(String needle, boolean heavy, String use, String source) {}

  private record StitchLine(
      String use,
      String iso4915,
      String name,
      String home,
      String stretch,
      double thread,
      String source) {}

  private record Book(List<NeedleLine> needles, List<StitchLine> stitches) {}

  private final Book book;

  Sewing() {
    try (InputStream yaml = Sewing.class.getResourceAsStream("/easewright/plan/sewing.yaml")) {
      book = new YAMLMapper().readValue(yaml, Book.class);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** Needles, the one for this weight of cloth first. */
  List<Needle> needles(boolean heavy) {
    return book.needles().stream()
        .sorted(Comparator.comparing(line -> line.heavy() != heavy))
        .map(line -> new Needle(line.needle(), line.use(), line.source()))
        .toList();
  }

  /** The stitches that these pieces need, with the length of their seams. */
  List<Stitch> stitches(Cut cut, Map<String, Double> finishedMm, UnitSystem units) {
    List<Stitch> stitches = new ArrayList<>();
    for (StitchLine line : book.stitches()) {
      double mm = seamMm(line.use(), cut, finishedMm);
      if (mm > 0) {
        stitches.add(
            new Stitch(
                line.use(),
                line.iso4915(),
                line.name(),
                line.home(),
                line.stretch(),
                Texts.amount(mm, units),
                Texts.thread(mm * line.thread(), units),
                line.source()));
      }
    }
    return stitches;
  }

  private static double seamMm(String use, Cut cut, Map<String, Double> finishedMm) {
    return switch (use) {
      // Each seam joins two edges, and both are drawn.
      case "seams" -> length(cut, Layer.MAIN, e -> !cut.partners(e).isEmpty(), finishedMm) / 2;
      case "layers" ->
          length(cut, Layer.LINING, e -> true, finishedMm)
              + length(cut, Layer.SUPPORT, e -> true, finishedMm);
      case "elastic" -> length(cut, Layer.MAIN, e -> finished(e, "elastic"), finishedMm);
      case "fastener tape" -> length(cut, Layer.MAIN, e -> finished(e, "tape"), finishedMm);
      default ->
          length(
              cut,
              Layer.MAIN,
              e -> finished(e, "turned") || finished(e, "topstitched"),
              finishedMm);
    };
  }

  private static boolean finished(Edge edge, String finish) {
    return edge.finish().filter(words -> words.contains(finish)).isPresent();
  }

  private static double length(
      Cut cut, Layer layer, Predicate<Edge> which, Map<String, Double> finishedMm) {
    double mm = 0;
    for (Piece piece : cut.pieces()) {
      for (Edge edge : piece.layer() == layer ? piece.edges() : List.<Edge>of()) {
        if (which.test(edge)) {
          mm +=
              edge.length().map(finishedMm::get).orElse(0.0) * edge.part() * piece.occurrences();
        }
      }
    }
    return mm;
  }
}
