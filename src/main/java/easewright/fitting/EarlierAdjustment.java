package easewright.fitting;

import java.util.List;

/**
 * A change made before this try-on.
 *
 * @param adjustment its id in the catalog
 * @param amount by how much; null when not said
 * @param outcome what the change did: "better", "same" or "worse"; null when not said
 * @param better ids of the signs that got better by it
 * @param worse ids of the signs that got worse by it
 */
public record EarlierAdjustment(
    String adjustment,
    GivenAmount amount,
    String outcome,
    List<String> better,
    List<String> worse) {

  public EarlierAdjustment {
    better = List.copyOf(better);
    worse = List.copyOf(worse);
  }
}
