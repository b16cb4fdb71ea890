package easewright.diagnosis;

import easewright.diagnosis.Advice.Candidate;
import easewright.diagnosis.Advice.Ranked;
import easewright.diagnosis.Amounts.Told;
import easewright.diagnosis.Answer.Amount;
import easewright.diagnosis.Answer.TrialNote;
import easewright.fitting.Fitting;
import easewright.fitting.Trial;
import easewright.inference.Posterior;
import easewright.rulebook.Voice;
import easewright.rulebook.Voice.ChangeWords;
import easewright.rulebook.Wording;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Finds what to try where no change is offered because the likeliest cause is not sure enough: that
 * cause's change, pinned or held and undone in a minute; or that of a cause not much less likely
 * whose amount she measured. What a caution, a rule, a limit or a try that failed stands against is
 * not tried either.
 */
final class FirstTrial {
  private final Knowledge knowledge;
  private final Posterior posterior;
  private final Restraints restraints;
  private final CureAmounts amounts;
  private final AmountLimits limits;
  private final Voice voice;

  FirstTrial(
      Knowledge knowledge,
      Posterior posterior,
      Restraints restraints,
      CureAmounts amounts,
      AmountLimits limits) {
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.restraints = restraints;
    this.amounts = amounts;
    this.limits = limits;
    this.voice = knowledge.source().wording().voices().get(Voice.USUAL);
  }

  /** The trial to make; null where there is none. */
  TrialNote in(Ranked ranked, Fitting fitting) {
    String cause = posterior.first();
    if (!ranked.offered().isEmpty()
        || posterior.probability(cause) < knowledge.parameter("tried-from")) {
      return null;
    }
    return measured(ranked, fitting, cause)
        .or(() -> notes(ranked, fitting, cause).findFirst())
        .orElse(null);
  }

  /** What she pinched or pinned is tried first: it is there, whatever its cause. */
  private Optional<TrialNote> measured(Ranked ranked, Fitting fitting, String likeliest) {
    double least =
        Math.max(
            knowledge.parameter("tried-from"),
            posterior.probability(likeliest) * knowledge.parameter("tried-as-measured-from"));
    return posterior.causesFrom(least).stream()
        .flatMap(cause -> notes(ranked, fitting, cause.cause()))
        .filter(note -> note.amount() != null && !note.amount().estimated())
        .findFirst();
  }

  /** The trials of a cause's changes, the most worthwhile first. */
  private Stream<TrialNote> notes(Ranked ranked, Fitting fitting, String cause) {
    return ranked.unsure().stream()
        .filter(one -> treats(one, cause) && !isMade(one, fitting))
        .filter(one -> !one.entry().tightens() || !restraints.isTighteningStopped())
        .sorted(
            Comparator.comparingDouble(Candidate::worth)
                .reversed()
                .thenComparing(one -> one.entry().id()))
        .flatMap(one -> note(one, cause).stream());
  }

  /** A change that only eases a fault would not tell whether it is that fault. */
  private boolean treats(Candidate candidate, String cause) {
    double partly = knowledge.parameter("partly");
    return candidate.cures().stream()
        .anyMatch(one -> one.cause().equals(cause) && knowledge.parameter(one.howMuch()) > partly);
  }

  private boolean isMade(Candidate candidate, Fitting fitting) {
    return fitting.trials().stream()
        .filter(one -> one.outcome() != null)
        .map(Trial::adjustment)
        .anyMatch(candidate.entry().id()::equals);
  }

  private Optional<TrialNote> note(Candidate candidate, String cause) {
    ChangeWords words = voice.changes().get(candidate.entry().id());
    Told told = amounts.whole(candidate.entry(), candidate.cures());
    if (words.test() == null || told.asItIs() != null || limits.isBeyond(candidate.with(told))) {
      return Optional.empty();
    }
    return Optional.of(
        new TrialNote(
            candidate.entry().id(),
            candidate.entry().name(),
            cause,
            knowledge.catalog().nameOf(cause),
            Explaining.rounded(posterior.probability(cause)),
            told.amount(),
            candidate.entry().tightens(),
            does(words, told.amount()),
            words.shows()));
  }

  private String does(ChangeWords words, Amount amount) {
    return Wording.fill(
        words.test(),
        "amount",
        amount == null ? voice.phrases().get("amount-untold").get(0) : amount.text(),
        "edge",
        voice.talk().edges().get(""));
  }
}
