package easewright.diagnosis;

import easewright.diagnosis.Advice.Candidate;
import easewright.diagnosis.Advice.SetAside;
import easewright.inference.Posterior;
import easewright.rulebook.Catalog.AdjustmentEntry;
import java.util.Optional;

/**
 * How sure a change must be of the cause it treats: what is hard to undo or costs cloth, more than
 * what is set back in a minute.
 */
final class Certainty {
  private final Knowledge knowledge;
  private final Posterior posterior;
  private final UnitFormatter shown;
  private final EarlierOutcomes tried;

  /**
   * @param tried what was changed before: a change that sat right on this body needs no more proof
   */
  Certainty(Knowledge knowledge, Posterior posterior, UnitFormatter shown, EarlierOutcomes tried) {
    this.tried = tried;
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.shown = shown;
  }

  /** The change set aside, if it costs too much for what is known of the likeliest cause. */
  Optional<SetAside> against(Candidate candidate) {
    double least = needed(candidate.entry()) * knowledge.parameter("offered-from");
    // Nothing is made tighter by a guess.
    boolean guess = candidate.tightens() && isUnmeasured(candidate);
    if (tried.satRight(candidate.entry())
        || candidate.sure()
            >= (guess ? Math.max(least, knowledge.parameter("sure-of-a-guess")) : least)) {
      return Optional.empty();
    }
    String cause =
        candidate.cures().stream()
            .map(cure -> cure.cause())
            .filter(one -> posterior.probability(one) == candidate.sure())
            .findFirst()
            .orElseThrow();
    String because =
        knowledge
            .source()
            .wording()
            .say(
                "held-unsure",
                "cause",
                knowledge.catalog().nameOf(cause),
                "chance",
                shown.percent(candidate.sure()));
    return Optional.of(new SetAside(candidate.entry(), because, null));
  }

  /**
   * Whether the first cause is clear: likely enough for the change that is offered first, or for a
   * guess where none is or its amount cannot be told.
   *
   * @param first what is offered first, or null
   */
  boolean isClear(Candidate first) {
    if (first != null && treatsTheFirst(first) && tried.satRight(first.entry())) {
      return true;
    }
    double probability = posterior.probability(posterior.first());
    boolean unsure = first == null || isUnmeasured(first);
    double least = unsure ? knowledge.parameter("sure-of-a-guess") : 0;
    return probability >= (first == null ? least : Math.max(least, needed(first.entry())));
  }

  private boolean treatsTheFirst(Candidate candidate) {
    return candidate.cures().stream().anyMatch(cure -> cure.cause().equals(posterior.first()));
  }

  private double needed(AdjustmentEntry entry) {
    return Math.max(
        knowledge.parameter("sure-undo-", entry.undo()),
        knowledge.parameter("sure-effort-", entry.effort()));
  }

  /** Whether its amount cannot be told before something was measured, not even by a guess. */
  private static boolean isUnmeasured(Candidate candidate) {
    return candidate.told().amount() == null && candidate.told().measureFirst() != null;
  }
}
