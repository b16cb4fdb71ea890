package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.fitting.GarmentEdge;
import easewright.fitting.MeasuredEdge;
import easewright.fitting.PlannedEdges;
import easewright.measure.Length;
import easewright.wording.Blanks;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/**
 * A figure of one edge: how far a length is off what was planned for it, a fraction of the plan.
 * The name in rules is the edge's, then the constant's in small letters with hyphens.
 */
enum EdgeFigure {
  ELASTIC_OFF_ITS_PLAN("elastic-cut-error", MeasuredEdge::elasticCut) {
    @Override
    Optional<Estimate> planned(MeasuredEdge edge, FittingNumbers n) {
      return PlannedEdges.of(n.fitting(), n.source()).elasticMm(edge);
    }
  },
  OFF_ITS_DRAFT("garment-error", MeasuredEdge::length) {
    @Override
    Optional<Estimate> planned(MeasuredEdge edge, FittingNumbers n) {
      return PlannedEdges.of(n.fitting(), n.source())
          .draftedMm(edge)
          .map(mm -> new Estimate(mm, 0));
    }
  };

  private static final List<OfEdge> ALL =
      Arrays.stream(values())
          .flatMap(figure -> Arrays.stream(GarmentEdge.values()).map(figure::of))
          .filter(one -> one.figure() != OFF_ITS_DRAFT || one.edge() != GarmentEdge.UNDERBAND)
          .toList();

  private final String inRules = name().toLowerCase(Locale.ROOT).replace('_', '-');
  private final String error;
  private final Function<MeasuredEdge, Length> found;

  /**
   * @param error parameter of the error of measuring it
   * @param found the length measured, null when it was not
   */
  EdgeFigure(String error, Function<MeasuredEdge, Length> found) {
    this.error = error;
    this.found = found;
  }

  /** The length planned, mm; empty where nothing tells. */
  abstract Optional<Estimate> planned(MeasuredEdge edge, FittingNumbers n);

  /** The figures of all edges. That of a finished underband is one of the girths. */
  static List<OfEdge> all() {
    return ALL;
  }

  OfEdge of(GarmentEdge edge) {
    return new OfEdge(this, edge, edge.wireName() + "-" + inRules);
  }

  /** The edge that is furthest off one way, if any is off by at least a limit that way. */
  Optional<OfEdge> furthest(FittingNumbers n, double limit) {
    return all().stream()
        .filter(one -> one.figure() == this && one.isGiven(n))
        .filter(one -> one.value(n) / limit >= 1)
        .max(Comparator.comparingDouble(one -> one.value(n) / limit));
  }

  /**
   * The figure of one edge.
   *
   * @param id the name in rules
   */
  record OfEdge(EdgeFigure figure, GarmentEdge edge, String id) implements Input {
    @Override
    public boolean isGiven(FittingNumbers numbers) {
      return numbers.figures().containsKey(id);
    }

    double value(FittingNumbers numbers) {
      return numbers.figure(id).value();
    }

    Formula formula() {
      return Formula.trying("figure-edge-" + figure.inRules, this::worked);
    }

    /** By how many millimetres it is off, above its plan positive. */
    Optional<Worked> off(FittingNumbers n) {
      return measured(n)
          .flatMap(one -> figure.planned(one, n).map(planned -> off(one, planned, n)));
    }

    private Optional<Worked> worked(FittingNumbers n) {
      return measured(n)
          .flatMap(
              one ->
                  figure
                      .planned(one, n)
                      .map(planned -> share(off(one, planned, n), planned.value())));
    }

    private Optional<MeasuredEdge> measured(FittingNumbers n) {
      return n.fitting().edge(edge).filter(one -> figure.found.apply(one) != null);
    }

    private Worked off(MeasuredEdge measured, Estimate planned, FittingNumbers n) {
      double found = figure.found.apply(measured).mm();
      return new Worked(
          Estimate.of(found - planned.value(), planned.sd(), n.parameter(figure.error)),
          Blanks.of("edge", n.source().wording().say("edge-" + edge.wireName()))
              .and("found", n.shown().length(found))
              .and("planned", n.shown().length(planned.value())));
    }

    private static Worked share(Worked off, double planned) {
      return new Worked(
          new Estimate(off.result().value() / planned, off.result().sd() / planned), off.blanks());
    }
  }
}
