package easewright.fitting;

import java.util.List;

/**
 * A change held, pinned or basted for a look, with nothing cut yet.
 *
 * @param adjustment its id in the catalog
 * @param amount by how much; null when not said
 * @param how "held", "pinned", "basted" or "worn"; "measured" where nothing was tried, and the
 *     amount is what a gap, a mark or two lengths say; null when not said
 * @param outcome "right" when the fault was gone with this amount, else "better", "same" or
 *     "worse"; null when not said
 */
public record Trial(String adjustment, GivenAmount amount, String how, String outcome) {

  /** Whether the fault was gone, so that this amount is the amount of the change. */
  public boolean isRight() {
    return "right".equals(outcome);
  }

  /** Whether only its amount is told, and nothing of what it did. */
  public boolean isOnlyMeasured() {
    return amount != null && outcome == null;
  }

  /** The trial as a change with this outcome. */
  public EarlierAdjustment asChange(String outcome) {
    return new EarlierAdjustment(adjustment, amount, outcome, List.of(), List.of());
  }
}
