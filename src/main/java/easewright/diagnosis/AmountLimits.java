package easewright.diagnosis;

import easewright.diagnosis.Advice.Candidate;
import easewright.diagnosis.Advice.SetAside;
import easewright.diagnosis.Amounts.Told;
import easewright.diagnosis.Answer.Amount;
import easewright.fitting.Fitting;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.wording.Blanks;
import java.util.Optional;
import java.util.Set;

/**
 * The policy on amounts, the same for every adjustment: what is smaller than a tape shows is left
 * alone. What is above the adjustment's limit is left to the adjustment that its catalog entry
 * names beyond it, if that makes up the same fault and may be offered; else it is changed up to the
 * limit. What brings something back to its plan has none. A change that was tried and helped has
 * proved that it may go further; one that was held by hand, by a part of its limit. Amounts and
 * limits are compared as a tape in the asker's units shows them.
 */
final class AmountLimits {
  private final Knowledge knowledge;
  private final UnitFormatter shown;
  private final Set<String> helped;
  private final Set<String> proved;

  /**
   * @param helped ids of adjustments that were tried and helped
   * @param fitting tells what was held by hand and sat right
   */
  AmountLimits(Knowledge knowledge, UnitFormatter shown, Set<String> helped, Fitting fitting) {
    this.knowledge = knowledge;
    this.shown = shown;
    this.helped = helped;
    this.proved = HandTrials.proved(fitting, knowledge.catalog());
  }

  /** Whether the amount is above the limit of its adjustment. */
  boolean isBeyond(Candidate candidate) {
    AdjustmentEntry entry = candidate.entry();
    Amount amount = candidate.told().amount();
    return amount != null
        && entry.limit() != null
        && !candidate.told().toThePlan()
        && !helped.contains(entry.id())
        && shown.isMore(amount.mm(), most(entry));
  }

  private double most(AdjustmentEntry entry) {
    double further =
        proved.contains(entry.id()) ? knowledge.parameter("proven-beyond-the-limit") : 1;
    return further * knowledge.parameter(entry.limit());
  }

  /** The change set aside, if by measure nothing is to be changed. */
  Optional<SetAside> asItIs(Candidate candidate) {
    return Optional.ofNullable(candidate.told().asItIs())
        .map(because -> new SetAside(candidate.entry(), because, null));
  }

  /** The change set aside for what takes over. */
  SetAside beyond(Candidate candidate) {
    return new SetAside(candidate.entry(), say("held-limit", candidate), null);
  }

  /**
   * The change up to its limit.
   *
   * @param named whether what may make up the rest may be named
   */
  Candidate upTo(Candidate candidate, boolean named, CureAmounts amounts) {
    Told told = candidate.told();
    double most = knowledge.parameter(candidate.entry().limit());
    Amount part =
        amounts.upTo(
            told.amount(), most, " " + say(named ? "up-to-limit" : "up-to-limit-alone", candidate));
    return candidate.with(new Told(part, told.measureFirst(), null));
  }

  private String say(String sentence, Candidate candidate) {
    AdjustmentEntry entry = candidate.entry();
    double limit = knowledge.parameter(entry.limit());
    Amount amount = candidate.told().amount();
    return knowledge
        .source()
        .wording()
        .say(
            sentence,
            Blanks.of("value", amount.text())
                .and("limit", shown.length(limit))
                .and("rest", shown.length(amount.mm() - limit))
                .and("beyond", knowledge.catalog().nameOf(entry.beyond())));
  }
}
