package easewright.clinic;

import easewright.pattern.PatternSheet;
import java.util.List;

/**
 * A likely fault of a pattern rather than of one toile: a cause that is more frequent in
 * neighbouring sizes than by chance.
 *
 * @param sheet the pattern
 * @param cause id of the cause
 * @param sizes the range affected
 * @param inside cases with that cause, of those cut in these sizes
 * @param elsewhere the same for the pattern's other sizes; for other patterns, if the range is all
 *     sizes
 * @param chance the probability that chance alone causes anything as striking anywhere in the
 *     clinic
 * @param bySize the same count for each cup, band or size of the pattern
 */
public record CommonFault(
    PatternSheet sheet,
    String cause,
    SizeRange sizes,
    Share inside,
    Share elsewhere,
    double chance,
    List<AtSize> bySize) {

  public CommonFault {
    bySize = List.copyOf(bySize);
  }

  /**
   * Cases with the cause at one cup, band or size.
   *
   * @param inside whether it is in the range affected
   */
  public record AtSize(String label, Share share, boolean inside) {}
}
