package easewright.size;

import java.util.List;
import java.util.Optional;

/**
 * The cells of a chart that share an underbust range, so that one integration is enough for all.
 */
record ChartRow(Range underbust, List<SizePart> parts) {
  /** Beyond this many SDs a probability is below one in three million. */
  private static final double REACH = 5.2;

  private static final int MOST_PANELS = 2000;

  /** Exceeds the error of an integration. */
  private static final double SLACK = 1e-7;

  // Gauss–Legendre nodes and weights for eight points (Abramowitz and Stegun, table 25.4).
  private static final double[] NODES = {
    0.183434642495650, 0.525532409916329, 0.796666477413627, 0.960289856497536
  };
  private static final double[] WEIGHTS = {
    0.362683783378362, 0.313706645877887, 0.222381034453374, 0.101228536290376
  };

  /** Adds each cell's probability; bust and underbust are normal with independent errors. */
  void chances(Girths girths, List<SizeChance> chances) {
    Integration integration = new Integration(girths);
    for (SizePart part : parts) {
      double probability = integration.probability(part.closed()) * part.share();
      if (probability > 0) {
        chances.add(new SizeChance(part.written(), probability));
      }
    }
  }

  /** This row for the given girths; empty if the underbust cannot lie in it. */
  Optional<Reached> reached(Girths girths) {
    Integration integration = new Integration(girths);
    return integration.from < integration.to
        ? Optional.of(
            new Reached(integration, between(underbust, girths.under(), girths.underSd())))
        : Optional.empty();
  }

  /** A row in which the underbust may lie, with the probability that it does. */
  final class Reached {
    private final Integration integration;
    private final double band;

    private Reached(Integration integration, double band) {
      this.integration = integration;
      this.band = band;
    }

    /** An upper bound of the probability of each cell in the row. */
    double bound() {
      return band + SLACK;
    }

    /**
     * Its most probable cell, the first if equal; empty unless it exceeds the given probability.
     */
    Optional<SizeChance> best(double most) {
      SizePart first = null;
      double best = most;
      for (SizePart part : parts) {
        if (bound(part.closed()) > best) {
          double probability = integration.probability(part.closed());
          if (probability > best) {
            best = probability;
            first = part;
          }
        }
      }
      return first == null ? Optional.empty() : Optional.of(new SizeChance(first.written(), best));
    }

    private double bound(SizeCell cell) {
      if (cell.difference() == null) {
        return bound();
      }
      if (!integration.reaches(cell.difference())) {
        return 0;
      }
      Girths girths = integration.girths;
      double nearest = integration.nearest(cell.difference());
      return band * between(cell.difference(), girths.bust() - nearest, girths.bustSd()) + SLACK;
    }
  }

  /** Bust and underbust as measured, with their errors, mm. */
  record Girths(double bust, double bustSd, double under, double underSd) {}

  /** One row's integration over the underbust; all cells share its points. */
  final class Integration {
    private final Girths girths;
    private final double from;
    private final double to;
    private double[][] rule;
    private double edge = Double.NaN;
    private double[] belowEdge;

    private Integration(Girths girths) {
      this.girths = girths;
      this.from = Math.max(underbust.loMm(), girths.under() - REACH * girths.underSd());
      this.to = Math.min(underbust.hiMm(), girths.under() + REACH * girths.underSd());
    }

    boolean reaches(Range difference) {
      return from < to
          && inReach(difference, girths.bust() - to, girths.bust() - from, girths.bustSd());
    }

    /** The underbust of this row at which a difference is most probable. */
    double nearest(Range difference) {
      double middle = (difference.loMm() + difference.hiMm()) / 2;
      return Math.min(to, Math.max(from, girths.bust() - middle));
    }

    double probability(SizeCell cell) {
      if (!(from < to)) {
        return 0;
      }
      if (cell.difference() == null) {
        return between(underbust, girths.under(), girths.underSd())
            * between(cell.across(), girths.bust(), girths.bustSd());
      }
      return reaches(cell.difference()) ? integral(cell.difference()) : 0;
    }

    private double integral(Range difference) {
      if (rule == null) {
        rule = rule(from, to, girths.under(), girths.underSd(), girths.bustSd());
      }
      // Cups are adjacent, so one's upper edge is usually the next one's lower edge.
      double[] low = difference.loMm() == edge ? belowEdge : below(difference.loMm());
      double[] high = below(difference.hiMm());
      edge = difference.hiMm();
      belowEdge = high;
      double sum = 0;
      for (int i = 0; i < high.length; i++) {
        sum += rule[1][i] * (high[i] - low[i]);
      }
      return sum;
    }

    /** Probability at each point that the difference lies below the edge. */
    private double[] below(double edgeMm) {
      double[] below = new double[rule[0].length];
      for (int i = 0; i < below.length; i++) {
        below[i] = Normal.below((edgeMm + (rule[0][i] - girths.bust())) / girths.bustSd());
      }
      return below;
    }
  }

  private static double between(Range range, double mean, double sd) {
    double lo = (range.loMm() - mean) / sd;
    double hi = (range.hiMm() - mean) / sd;
    // Above the mean both are near one, and their difference would lose precision.
    return lo > 0 ? Normal.below(-lo) - Normal.below(-hi) : Normal.below(hi) - Normal.below(lo);
  }

  private static boolean inReach(Range difference, double least, double most, double sd) {
    return difference.hiMm() > least - REACH * sd && difference.loMm() < most + REACH * sd;
  }

  /**
   * Points and weights over the underbust, weights including its density. Panels are at most twice
   * the smaller error wide, which eight points integrate to better than 1e-8.
   */
  private static double[][] rule(double from, double to, double mean, double sd, double bustSd) {
    int panels =
        (int) Math.min(MOST_PANELS, Math.max(1, Math.ceil((to - from) / 2 / Math.min(sd, bustSd))));
    double half = (to - from) / panels / 2;
    double[] points = new double[panels * 8];
    double[] weights = new double[panels * 8];
    int n = 0;
    for (int panel = 0; panel < panels; panel++) {
      double middle = from + (2 * panel + 1) * half;
      for (int i = 0; i < 4; i++) {
        for (int sign = -1; sign <= 1; sign += 2) {
          points[n] = middle + sign * half * NODES[i];
          weights[n] = half * WEIGHTS[i] * Normal.density((points[n] - mean) / sd) / sd;
          n++;
        }
      }
    }
    return new double[][] {points, weights};
  }
}
