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
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Needles and stitches, as {@code easewright/plan/sewing.yaml} lists them. */
final class Sewing {
  private static final String SEAMS = "seams";

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

  /** The stitches that these pieces need, with the length of their seams where it is known. */
  List<Stitch> stitches(Cut cut, Map<String, Double> finishedMm, UnitSystem units) {
    List<Stitch> stitches = new ArrayList<>();
    for (StitchLine line : book.stitches()) {
      List<Sewn> sewn = sewn(line.use(), cut);
      double edgesMm = sewn.stream().mapToDouble(one -> one.mm(finishedMm)).sorted().sum();
      // Each seam joins two edges, and both are drawn.
      double mm = line.use().equals(SEAMS) ? edgesMm / 2 : edgesMm;
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

    boolean finished(String... words) {
      return edge.finish()
          .filter(finish -> Arrays.stream(words).anyMatch(finish::contains))
          .isPresent();
    }
  }

  private static List<Sewn> sewn(String use, Cut cut) {
    return cut.pieces().stream()
        .flatMap(piece -> piece.edges().stream().map(edge -> new Sewn(piece, edge)))
        .filter(one -> (one.piece().layer() != Layer.MAIN) == use.equals("layers"))
        .filter(
            one ->
                switch (use) {
                  case SEAMS -> !cut.partners(one.edge()).isEmpty();
                  case "layers" -> true;
                  case "elastic" -> one.finished("elastic");
                  case "fastener tape" -> one.finished("tape");
                  default -> one.finished("turned", "topstitched");
                })
        .toList();
  }
}
