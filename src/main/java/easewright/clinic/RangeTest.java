package easewright.clinic;

import easewright.pattern.PatternSheet;
import java.util.HashMap;
import java.util.Map;
import org.apache.commons.math3.distribution.HypergeometricDistribution;

/** A range of sizes and what it is compared with, as cells of cases. */
final class RangeTest {
  private final PatternSheet sheet;
  private final SizeRange range;
  private final int[] inside;
  private final int[] elsewhere;
  private final int casesInside;
  private final int casesElsewhere;
  private final Map<Long, Double> known = new HashMap<>();

  /**
   * Cells are given by their numbers.
   *
   * @param cases number of cases in each cell
   */
  RangeTest(PatternSheet sheet, SizeRange range, int[] inside, int[] elsewhere, int[] cases) {
    this.sheet = sheet;
    this.range = range;
    this.inside = inside;
    this.elsewhere = elsewhere;
    this.casesInside = sum(inside, cases);
    this.casesElsewhere = sum(elsewhere, cases);
  }

  PatternSheet sheet() {
    return sheet;
  }

  SizeRange range() {
    return range;
  }

  /** Whether there are enough cases for a conclusion, and some to compare them with. */
  boolean hasCases() {
    return casesInside >= Share.LEAST && casesElsewhere > 0;
  }

  /**
   * The probability that a cause occurs here at least this often by chance.
   *
   * @param hits number of cases of each cell with the cause
   */
  double chance(int[] hits) {
    int in = sum(inside, hits);
    int all = in + sum(elsewhere, hits);
    return known.computeIfAbsent(
        ((long) all << Integer.SIZE) + in,
        table -> fisher(casesInside + casesElsewhere, all, casesInside, in));
  }

  /**
   * Fisher's exact test, one-sided.
   *
   * @param all total number of cases
   * @param hits cases with the cause
   * @param inside cases in the range
   * @param hitsInside cases in the range with the cause
   * @return the probability of at least as many
   */
  static double fisher(int all, int hits, int inside, int hitsInside) {
    return new HypergeometricDistribution(null, all, hits, inside)
        .upperCumulativeProbability(hitsInside);
  }

  Share inside(int[] hits) {
    return new Share(sum(inside, hits), casesInside);
  }

  Share elsewhere(int[] hits) {
    return new Share(sum(elsewhere, hits), casesElsewhere);
  }

  private static int sum(int[] cells, int[] counts) {
    int sum = 0;
    for (int cell : cells) {
      sum += counts[cell];
    }
    return sum;
  }
}
