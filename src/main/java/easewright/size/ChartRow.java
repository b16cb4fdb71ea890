package easewright.size;

import java.util.List;

/** The cells of a chart that share an underbust range, so that one integration serves them all. */
record ChartRow(Range underbust, List<SizeCell> written, List<SizeCell> closed) {
  /** Beyond this many SDs a probability is below one in three million. */
  private static final double REACH = 5.2;

  private static final int MOST_PANELS = 2000;

  // Gauss–Legendre nodes and weights for eight points (Abramowitz and Stegun, table 25.4).
  private static final double[] NODES = {
    0.183434642495650, 0.525532409916329, 0.796666477413627, 0.960289856497536
  };
  private static final double[] WEIGHTS = {
    0.362683783378362, 0.313706645877887, 0.222381034453374, 0.101228536290376
  };

  /** Adds each cell's probability; bust and underbust are normal with independent errors. */
  void chances(double bust, double bustSd, double under, double underSd, List<SizeChance> chances) {
    double from = Math.max(underbust.loMm(), under - REACH * underSd);
    double to = Math.min(underbust.hiMm(), under + REACH * underSd);
    if (from >= to) {
      return;
    }
    double[][] rule = null;
    for (int i = 0; i < closed.size(); i++) {
      SizeCell cell = closed.get(i);
      double probability;
      if (cell.difference() == null) {
        probability = between(underbust, under, underSd) * between(cell.across(), bust, bustSd);
      } else if (!inReach(cell.difference(), bust - to, bust - from, bustSd)) {
        continue;
      } else {
        rule = rule == null ? rule(from, to, under, underSd, bustSd) : rule;
        probability = integral(rule, cell.difference(), bust, bustSd);
      }
      if (probability > 0) {
        chances.add(new SizeChance(written.get(i), probability));
      }
    }
  }

  private static double between(Range range, double mean, double sd) {
    double lo = (range.loMm() - mean) / sd;
    double hi = (range.hiMm() - mean) / sd;
    // Above the mean both are near one and their difference would lose its digits.
    return lo > 0 ? Normal.below(-lo) - Normal.below(-hi) : Normal.below(hi) - Normal.below(lo);
  }

  private static boolean inReach(Range difference, double least, double most, double sd) {
    return difference.hiMm() > least - REACH * sd && difference.loMm() < most + REACH * sd;
  }

  /**
   * Points and weights over the underbust, weights holding its density. Panels are no wider than
   * twice the smaller error, which eight points integrate to better than 1e-8.
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

  private static double integral(double[][] rule, Range difference, double bust, double sd) {
    double sum = 0;
    for (int i = 0; i < rule[0].length; i++) {
      double shift = rule[0][i] - bust;
      sum +=
          rule[1][i]
              * (Normal.below((difference.hiMm() + shift) / sd)
                  - Normal.below((difference.loMm() + shift) / sd));
    }
    return sum;
  }
}
