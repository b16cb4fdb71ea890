package easewright.fitting;

import easewright.cloth.Estimate;
import easewright.measure.Length;
import easewright.pattern.Edge;
import easewright.pattern.PatternSheet;
import easewright.pattern.Trim;
import easewright.rulebook.RuleBookSource;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * What is planned for the edges of a toile: how long each is before its elastic, and how long its
 * elastic is cut. The sheet decides; without one, what the wearer says the pattern states, and what
 * is usual for the kind of elastic. Lengths in millimetres.
 */
public final class PlannedEdges {
  private static final Map<GarmentEdge, String> TERMS =
      Map.of(
          GarmentEdge.NECKLINE, "necklineEdge",
          GarmentEdge.BACK_NECKLINE, "backNeckline",
          GarmentEdge.ARMHOLE, "armholeEdge",
          GarmentEdge.UNDERBAND, "underband");
  private static final Map<GarmentEdge, Set<String>> LINES =
      Map.of(
          GarmentEdge.NECKLINE, Set.of("neckline"),
          GarmentEdge.BACK_NECKLINE, Set.of("back-neckline"),
          GarmentEdge.ARMHOLE, Set.of("front-armhole", "back-armhole"),
          GarmentEdge.UNDERBAND, Set.of("casing", "underband-seam", "lower-edge"));

  private final Fitting fitting;
  private final RuleBookSource source;
  private final Map<String, Double> finished;
  private final List<Trim> elastics;

  private PlannedEdges(Fitting fitting, RuleBookSource source) {
    this.fitting = fitting;
    this.source = source;
    Optional<PatternSheet> sheet = Optional.ofNullable(fitting.sheet());
    this.finished =
        sheet
            .flatMap(one -> Optional.ofNullable(fitting.sizeCut()).flatMap(one::size))
            .map(size -> fitting.sheet().finishedMm(size, fitting.choices()))
            .orElse(Map.of());
    this.elastics =
        finished.isEmpty()
            ? List.of()
            : fitting.sheet().trims(fitting.choices()).stream()
                .filter(trim -> trim.kind().equals("elastic"))
                .toList();
  }

  /** What is planned for the edges of this fitting's pattern. */
  public static PlannedEdges of(Fitting fitting, RuleBookSource source) {
    return new PlannedEdges(fitting, source);
  }

  /** The lines of a pattern sheet on which the elastic of an edge lies. */
  public static Set<String> lines(GarmentEdge edge) {
    return LINES.get(edge);
  }

  /** Length of an edge as the pattern has it, before its elastic; empty where nothing tells. */
  public Optional<Double> draftedMm(MeasuredEdge measured) {
    if (measured.drafted() != null) {
      return Optional.of(measured.drafted().mm());
    }
    return nearest(
        measured,
        measured.length() == null ? measured.elasticCut() : measured.length(),
        edge -> Optional.ofNullable(finished.get(TERMS.get(edge))).stream());
  }

  /** Cut length of an edge's elastic, joining included, with its error; empty if nothing tells. */
  public Optional<Estimate> elasticMm(MeasuredEdge measured) {
    Optional<Double> onSheet = nearest(measured, measured.elasticCut(), this::trimmed);
    double cutting = source.parameter("elastic-cut-error");
    return onSheet.isPresent()
        ? onSheet.map(mm -> new Estimate(mm, cutting))
        : cloth(measured).map(cloth -> usual(measured, cloth));
  }

  /** Length of an edge's cloth before its elastic; a finished edge may be drawn in by it. */
  private Optional<Estimate> cloth(MeasuredEdge measured) {
    boolean band = measured.edge() == GarmentEdge.UNDERBAND;
    Optional<Estimate> drafted =
        band && fitting.garment().bandCloth() != null
            ? Optional.of(fitting.garment().bandCloth().mm()).map(mm -> new Estimate(mm, 0))
            : Optional.ofNullable(measured.drafted()).map(one -> new Estimate(one.mm(), 0));
    double error = source.parameter("edge-drawn-in-error");
    // A finished band is as long as its elastic, whatever its cloth was.
    return drafted.isPresent() || band
        ? drafted
        : Optional.ofNullable(measured.length())
            .map(one -> new Estimate(one.mm(), one.mm() * error));
  }

  private Estimate usual(MeasuredEdge measured, Estimate cloth) {
    boolean band = measured.edge() == GarmentEdge.UNDERBAND;
    String kind = measured.elastic().kind() == null ? "flat" : measured.elastic().kind();
    double share = source.parameter("elastic-share-" + (band ? "band" : kind));
    double joining = source.parameter(band ? "elastic-joining" : "edge-elastic-joining");
    return Estimate.of(
        cloth.value() * share + joining,
        cloth.sd() * share,
        cloth.value() * source.parameter("elastic-share-error"));
  }

  /** The planned length of this edge; a neckline may have been measured all round. */
  private static Optional<Double> nearest(
      MeasuredEdge measured, Length found, Function<GarmentEdge, Stream<Double>> planned) {
    Optional<Double> own = planned.apply(measured.edge()).reduce(Double::sum);
    if (measured.edge() != GarmentEdge.NECKLINE || found == null) {
      return own;
    }
    Optional<Double> round =
        planned
            .apply(GarmentEdge.BACK_NECKLINE)
            .reduce(Double::sum)
            .map(back -> back + own.orElse(0.0));
    return Stream.of(own, round)
        .flatMap(Optional::stream)
        .min(Comparator.comparingDouble(mm -> Math.abs(mm - found.mm())));
  }

  /** Lengths of the elastics planned for an edge; of the two armholes, of one. */
  private Stream<Double> trimmed(GarmentEdge edge) {
    double share = edge == GarmentEdge.ARMHOLE ? 0.5 : 1;
    return elastics.stream()
        .filter(trim -> isFor(edge, trim))
        .flatMap(trim -> trim.lengthMm(finished).map(mm -> mm * trim.times() * share).stream());
  }

  private static boolean isFor(GarmentEdge edge, Trim trim) {
    List<String> lines = trim.places().stream().map(Edge.Ref::edge).toList();
    // One elastic that runs all round the neck is the neckline's.
    return !Collections.disjoint(lines, LINES.get(edge))
        && !(edge == GarmentEdge.BACK_NECKLINE
            && !Collections.disjoint(lines, LINES.get(GarmentEdge.NECKLINE)));
  }
}
