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

  /**
   * Whether the most probable size is no clear choice over the second.
   *
   * @param clearShare the share of both that a clear choice has
   */
  public boolean between(double clearShare) {
    if (chances.size() < 2) {
      return false;
    }
    double first = chances.get(0).probability();
    return first < clearShare * (first + chances.get(1).probability());
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
