package easewright.size;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Probabilities of a chart's sizes for a body measured with error; sizes and outside sum to one.
 *
 * @param chances every size in range, most probable first
 * @param outside probability that no size of the chart fits both girths
 */
public record SizeEstimate(List<SizeChance> chances, double outside) {
  /** Design choice: below 60 to 40 the first size is not a clear choice over the second. */
  private static final double CLEAR_SHARE = 0.6;

  public SizeEstimate {
    chances =
        chances.stream()
            .sorted(Comparator.comparingDouble(SizeChance::probability).reversed())
            .toList();
  }

  /** The most probable size; empty if the whole chart is out of range. */
  public Optional<SizeChance> best() {
    return chances.stream().findFirst();
  }

  /** The other sizes with at least this probability, most probable first. */
  public List<SizeChance> neighbours(double least) {
    return chances.stream().skip(1).filter(chance -> chance.probability() >= least).toList();
  }

  /** Whether the two most probable sizes are closer than 60 to 40. */
  public boolean between() {
    if (chances.size() < 2) {
      return false;
    }
    double first = chances.get(0).probability();
    return first < CLEAR_SHARE * (first + chances.get(1).probability());
  }

  /** The probability of a size by its id; zero if out of range or unknown. */
  public double probability(String id) {
    return chances.stream()
        .filter(chance -> chance.cell().id().equals(id))
        .mapToDouble(SizeChance::probability)
        .findFirst()
        .orElse(0);
  }
}
