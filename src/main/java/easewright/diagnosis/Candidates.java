package easewright.diagnosis;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toList;

import easewright.diagnosis.Advice.Candidate;
import easewright.diagnosis.Amounts.Told;
import easewright.diagnosis.inference.Posterior;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.Conclusions.FirstOfAll;
import easewright.rulebook.RuleText;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Works out what an adjustment is worth in one fitting, and how much it would change. */
final class Candidates {
  private final Knowledge knowledge;
  private final Posterior posterior;
  private final Conclusions said;
  private final CureAmounts amounts;
  private final AmountLimits limits;
  private final Restraints restraints;

  Candidates(
      Knowledge knowledge,
      Posterior posterior,
      Conclusions said,
      CureAmounts amounts,
      AmountLimits limits,
      Restraints restraints) {
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.said = said;
    this.amounts = amounts;
    this.limits = limits;
    this.restraints = restraints;
  }

  /** What a rule puts before everything else: no relief is weighed against a warning. */
  List<Candidate> firstOfAll(Map<String, List<Cures>> byAdjustment) {
    Map<String, List<RuleText>> rules =
        said.firstOfAll().stream()
            .collect(
                groupingBy(
                    FirstOfAll::adjustment, TreeMap::new, mapping(FirstOfAll::rule, toList())));
    List<Candidate> first = new ArrayList<>();
    rules.forEach(
        (id, by) -> {
          AdjustmentEntry entry = knowledge.catalog().adjustments().get(id);
          if (!restraints.isSlackOnly(entry)) {
            Told told = amounts.whole(entry, byAdjustment.getOrDefault(id, List.of()));
            // It is done though the numbers see no need: the body says otherwise.
            Told step = limits.isSmall(told.amount()) ? amounts.firstStep(entry) : told;
            first.add(new Candidate(entry, 1, true, false, step, List.of(), by));
          }
        });
    return first;
  }

  /** An adjustment with the cures it rests on. */
  Candidate candidate(AdjustmentEntry entry, List<Cures> cures) {
    double relief = 0;
    double most = 0;
    Set<String> counted = new HashSet<>();
    for (Cures cure : cures) {
      double probability = posterior.probability(cure.cause());
      most = Math.max(most, probability);
      if (counted.add(cure.cause())) {
        relief += probability * knowledge.parameter(cure.howMuch());
      }
    }
    double harm =
        knowledge.worsened(entry.id(), said).stream().mapToDouble(posterior::probability).sum()
            * knowledge.parameter("worsening-cost");
    int sideEffects = entry.sideEffects() == null ? 0 : entry.sideEffects().size();
    double worth =
        Math.min(1, relief)
            - knowledge.parameter("effort-", entry.effort())
            - harm
            - sideEffects * knowledge.parameter("side-effect-risk");
    List<RuleText> rules = cures.stream().map(Cures::rule).distinct().toList();
    return new Candidate(
        entry,
        worth,
        most >= knowledge.parameter("likely"),
        restraints.isSlackOnly(entry),
        told(entry, cures),
        cures,
        rules);
  }

  /** What would be offered of a change: the slack where no more may be taken up, else all of it. */
  private Told told(AdjustmentEntry entry, List<Cures> cures) {
    return restraints.isSlackOnly(entry)
        ? amounts
            .slack(entry, cures)
            .map(slack -> new Told(slack, null))
            .orElseGet(() -> amounts.whole(entry, cures))
        : amounts.whole(entry, cures);
  }
}
