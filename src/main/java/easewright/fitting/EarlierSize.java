package easewright.fitting;

import java.util.List;

/**
 * A toile sewn before in another size.
 *
 * @param size the size it was cut in, a size of the sheet if there is one
 * @param outcome how it fitted beside the present one: "better", "same" or "worse"; null when not
 *     said
 * @param better ids of the signs that it showed less than the present one does
 * @param worse ids of the signs that it showed more
 */
public record EarlierSize(String size, String outcome, List<String> better, List<String> worse) {

  public EarlierSize {
    better = List.copyOf(better);
    worse = List.copyOf(worse);
  }
}
