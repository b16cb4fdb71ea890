package easewright.diagnosis;

import static java.util.stream.Collectors.averagingDouble;
import static java.util.stream.Collectors.groupingBy;

import easewright.diagnosis.Advice.Candidate;
import easewright.diagnosis.Amounts.Told;
import easewright.fitting.EarlierAdjustment;
import easewright.inference.Posterior;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.Conclusions.FirstOfAll;
import easewright.rulebook.RuleText;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** Works out what an adjustment is worth in one fitting, and how much it would change. */
final class Candidates {
  /** The one adjustment whose deed is another's undoing. */
  private static final String PUT_BACK = "put-the-last-change-back";

  private final Knowledge knowledge;
  private final Posterior posterior;
  private final Conclusions said;
  private final CureAmounts amounts;
  private final Restraints restraints;
  private final EarlierOutcomes tried;
  private final Map<String, Candidate> worked = new HashMap<>();

  Candidates(
      Knowledge knowledge,
      Posterior posterior,
      Conclusions said,
      CureAmounts amounts,
      Restraints restraints,
      EarlierOutcomes tried) {
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.said = said;
    this.amounts = amounts;
    this.restraints = restraints;
    this.tried = tried;
  }

  /** What a rule puts before everything else: no relief is weighed against a warning. */
  List<Candidate> firstOfAll(Map<String, List<Cures>> byAdjustment) {
    Map<String, List<RuleText>> rules = new TreeMap<>();
    Replacements replacements = new Replacements(said.replaced());
    for (FirstOfAll one : said.firstOfAll()) {
      for (String id : standingIn(one.adjustment(), replacements)) {
        rules.computeIfAbsent(id, i -> new ArrayList<>()).add(one.rule());
      }
    }
    List<Candidate> first = new ArrayList<>();
    rules.forEach(
        (id, by) -> {
          AdjustmentEntry entry = knowledge.catalog().adjustments().get(id);
          if (id.equals(PUT_BACK)) {
            if (restraints.heldByRule(entry) != null) {
              return;
            }
            Optional<Candidate> part = partBack(byAdjustment, by);
            if (part.isPresent()) {
              first.add(part.get());
              return;
            }
            tried
                .last()
                .filter(this::mayBePutBack)
                .ifPresent(last -> first.add(back(entry, last, by)));
          } else if (!restraints.isSlackOnly(entry)) {
            Told told = amounts.whole(entry, byAdjustment.getOrDefault(id, List.of()));
            // It is done though the numbers see no need: the body says otherwise.
            Told step =
                told.amount() == null
                    ? amounts.roughly(entry, byAdjustment.getOrDefault(id, List.of()))
                    : told;
            first.add(new Candidate(entry, 1, true, 1, false, null, step, List.of(), by));
          }
        });
    return first;
  }

  /** What a rule puts in its place comes first instead, unless that would tighten. */
  private Set<String> standingIn(String adjustment, Replacements replacements) {
    Set<String> others = replacements.of(adjustment);
    return others.stream().anyMatch(id -> knowledge.catalog().adjustments().get(id).tightens())
        ? Set.of(adjustment)
        : others;
  }

  /** What gave room would tighten if it were put back. */
  private boolean mayBePutBack(AdjustmentEntry last) {
    return last.tightens() || !restraints.isTighteningStopped();
  }

  private Candidate back(AdjustmentEntry entry, AdjustmentEntry last, List<RuleText> by) {
    // Of what may not be named no amount is told either.
    Told told = restraints.isTighteningStopped() ? Told.NOTHING : amounts.putBack(tried.lastMade());
    return new Candidate(entry, 1, true, 1, false, last, told, List.of(), by);
  }

  /**
   * The part of the last change to give back, where it helped and went too far and a measurement
   * tells the part; the whole would bring the old fault back.
   */
  private Optional<Candidate> partBack(Map<String, List<Cures>> byAdjustment, List<RuleText> by) {
    return tried
        .tooFar()
        .flatMap(
            last ->
                knowledge.catalog().adjustments().values().stream()
                    .filter(one -> one.givesBack() != null)
                    .filter(one -> one.givesBack().contains(last.adjustment()))
                    .filter(one -> !one.tightens() || !restraints.isTighteningStopped())
                    .filter(one -> restraints.heldByRule(one) == null)
                    .filter(one -> byAdjustment.containsKey(one.id()))
                    .map(one -> part(one, last, byAdjustment.get(one.id()), by))
                    .flatMap(Optional::stream)
                    .findFirst());
  }

  private Optional<Candidate> part(
      AdjustmentEntry entry, EarlierAdjustment last, List<Cures> cures, List<RuleText> by) {
    Told told = amounts.whole(entry, cures);
    boolean isPart =
        told.amount() != null
            && !told.amount().estimated()
            && (last.amount() == null || told.amount().mm() < last.amount().mm());
    return isPart
        ? Optional.of(new Candidate(entry, 1, true, 1, false, null, told, cures, by))
        : Optional.empty();
  }

  /** An adjustment with the cures it rests on; worked out once while these stay the same. */
  Candidate candidate(AdjustmentEntry entry, List<Cures> cures) {
    Candidate known = worked.get(entry.id());
    if (known == null || !known.cures().equals(cures)) {
      known = work(entry, cures);
      worked.put(entry.id(), known);
    }
    return known;
  }

  private Candidate work(AdjustmentEntry entry, List<Cures> cures) {
    double relief = 0;
    double most = 0;
    // Several rules count by their middle; what stands in for several changes, as the best of them.
    Map<String, Map<String, Double>> cured =
        cures.stream()
            .distinct()
            .collect(
                groupingBy(
                    Cures::cause,
                    TreeMap::new,
                    groupingBy(
                        Cures::adjustment,
                        averagingDouble(c -> knowledge.parameter(c.howMuch())))));
    for (var one : cured.entrySet()) {
      double probability = posterior.probability(one.getKey());
      most = Math.max(most, probability);
      relief += probability * Collections.max(one.getValue().values());
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
        most,
        restraints.isSlackOnly(entry),
        null,
        told(entry, cures, most),
        cures,
        rules);
  }

  /** What would be offered of a change: the slack where no more may be taken up, else all of it. */
  private Told told(AdjustmentEntry entry, List<Cures> cures, double sure) {
    Told whole = amounts.whole(entry, cures);
    if (restraints.isSlackOnly(entry)) {
      return amounts.slack(entry, cures).map(slack -> new Told(slack, null, null)).orElse(whole);
    }
    // A guess is no answer to a sign that other causes show as well: what tells is measured first.
    boolean guessed = whole.amount() != null && whole.amount().estimated();
    return guessed && whole.measureFirst() != null && sure < knowledge.parameter("sure-of-a-guess")
        ? new Told(null, whole.measureFirst(), null)
        : whole;
  }
}
