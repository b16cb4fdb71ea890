package easewright.diagnosis;

import easewright.diagnosis.Advice.Candidate;
import easewright.diagnosis.Advice.SetAside;
import easewright.diagnosis.Answer.Amount;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.wording.Blanks;
import java.util.Optional;

/**
 * The policy on amounts, the same for every adjustment: what is smaller than a tape shows is left
 * alone, and what is above the adjustment's limit is left to the adjustment that its catalog entry
 * names beyond it. The numbers stand in the rule book.
 */
final class AmountLimits {
  private final Knowledge knowledge;
  private final UnitFormatter shown;

  AmountLimits(Knowledge knowledge, UnitFormatter shown) {
    this.knowledge = knowledge;
    this.shown = shown;
  }

  /** Whether an amount is smaller than a tape shows; null is not. */
  boolean isSmall(Amount amount) {
    return amount != null && amount.mm() < knowledge.parameter("tape-shows");
  }

  /** Whether the amount is above the limit of its adjustment, so that another takes over. */
  boolean isBeyond(Candidate candidate) {
    AdjustmentEntry entry = candidate.entry();
    Amount amount = candidate.told().amount();
    return amount != null
        && entry.limit() != null
        && amount.mm() > knowledge.parameter(entry.limit());
  }

  /**
   * The change set aside, if it is too small or too large.
   *
   * @param named whether what takes over may be named
   */
  Optional<SetAside> against(Candidate candidate, boolean named) {
    Amount amount = candidate.told().amount();
    if (isSmall(amount)) {
      return setAside(candidate, "held-small", Blanks.of("value", amount.text()));
    }
    if (!isBeyond(candidate)) {
      return Optional.empty();
    }
    AdjustmentEntry entry = candidate.entry();
    return setAside(
        candidate,
        named ? "held-limit" : "held-limit-alone",
        Blanks.of("value", amount.text())
            .and("limit", shown.length(knowledge.parameter(entry.limit())))
            .and("beyond", knowledge.catalog().nameOf(entry.beyond())));
  }

  private Optional<SetAside> setAside(Candidate candidate, String sentence, Blanks blanks) {
    String because = knowledge.source().wording().say(sentence, blanks);
    return Optional.of(new SetAside(candidate.entry(), because, null));
  }
}
