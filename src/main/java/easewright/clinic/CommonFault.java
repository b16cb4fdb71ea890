package easewright.clinic;

import easewright.pattern.PatternSheet;
import java.util.List;

/**
 * What is likely wrong with a pattern rather than with one toile: a cause found in neighbouring
 * sizes more often than chance would bring it there.
 *
 * @param sheet the pattern
 * @param cause id of the cause
 * @param sizes where
 * @param inside cases with that cause, of those cut in these sizes
 * @param elsewhere the same of the pattern's other sizes; of other patterns, if these are all
 * @param chance how often chance alone would bring anything as striking anywhere in the clinic, a
 *     probability
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
   * @param inside whether it is one of those the fault is in
   */
  public record AtSize(String label, Share share, boolean inside) {}
}
