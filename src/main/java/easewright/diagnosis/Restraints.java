package easewright.diagnosis;

import easewright.diagnosis.Advice.SetAside;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.Conclusions.TighteningHeld;
import java.util.List;

/**
 * Which changes cautions and rules forbid in one fitting. What would tighten while a caution
 * forbids it is not even named. Taking up what was measured to hang loose is no tightening, and
 * some cautions let it pass.
 */
final class Restraints {
  private final Catalog catalog;
  private final Conclusions said;
  private final CureAmounts amounts;
  private final boolean nothingTighter;
  private final boolean noSize;

  /**
   * @param nothingTighter whether changes that tighten are passed over in silence
   * @param noSize whether changes that name the size measured are passed over in silence
   */
  Restraints(
      Catalog catalog,
      Conclusions said,
      CureAmounts amounts,
      boolean nothingTighter,
      boolean noSize) {
    this.catalog = catalog;
    this.said = said;
    this.amounts = amounts;
    this.nothingTighter = nothingTighter;
    this.noSize = noSize;
  }

  /** Whether a change is neither offered nor named. */
  boolean isPassedOver(AdjustmentEntry entry, List<Cures> cures) {
    boolean forbidden =
        isSilent(entry)
            && !(tighteningIsHeld()
                && said.tighteningHeld().stream().allMatch(TighteningHeld::slackMayGo)
                && amounts.slack(entry, cures).isPresent());
    return forbidden || namesASize(entry);
  }

  /** Whether a change that is not offered is not named either, not even to say no to it. */
  boolean isUnnamed(AdjustmentEntry entry) {
    return isSilent(entry) || namesASize(entry);
  }

  private boolean namesASize(AdjustmentEntry entry) {
    return noSize && entry.does().contains("{size}");
  }

  /** Whether nothing is said of it where a change is not offered. */
  boolean isSilent(AdjustmentEntry entry) {
    return entry.tightens() && nothingTighter;
  }

  /** Whether nothing may be made tighter than it is. */
  boolean isTighteningStopped() {
    return nothingTighter || tighteningIsHeld();
  }

  /** Whether no more may be taken up than was measured to hang loose. */
  boolean isSlackOnly(AdjustmentEntry entry) {
    return entry.tightens() && tighteningIsHeld();
  }

  /** The change set aside, if a rule holds it back; else null. */
  SetAside heldByRule(AdjustmentEntry entry) {
    return said.heldBack().stream()
        .filter(held -> held.adjustment().equals(entry.id()))
        .findFirst()
        .map(held -> new SetAside(entry, catalog.reasons().get(held.reason()).says(), held.rule()))
        .orElse(null);
  }

  private boolean tighteningIsHeld() {
    return !said.tighteningHeld().isEmpty();
  }
}
