package easewright.diagnosis;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toList;

import easewright.diagnosis.Amounts.Told;
import easewright.diagnosis.inference.Posterior;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.Conclusions.FirstOfAll;
import easewright.rulebook.Conclusions.TighteningHeld;
import easewright.rulebook.OrderOfWork;
import easewright.rulebook.RuleText;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToIntFunction;

/**
 * Ranks adjustments: expected relief less effort and risk, in the trade's order of work. What a
 * rule holds back is set aside with its reason; what would tighten while a caution forbids it is
 * passed over in silence. Taking up what was measured to hang loose is no tightening, and some
 * cautions let it pass.
 */
final class Advice {
  private final Knowledge knowledge;
  private final Posterior posterior;
  private final Conclusions said;
  private final List<String> inPlay;
  private final CureAmounts amounts;
  private final AmountLimits limits;
  private final boolean nothingTighter;
  private final boolean noSize;

  /**
   * @param inPlay causes worth mentioning
   * @param amounts how much an adjustment changes for its cures
   * @param limits which amounts are too small to make, or too large for one change
   * @param nothingTighter whether changes that tighten are passed over in silence
   * @param noSize whether changes that name the size measured are passed over in silence
   */
  Advice(
      Knowledge knowledge,
      Posterior posterior,
      Conclusions said,
      List<String> inPlay,
      CureAmounts amounts,
      AmountLimits limits,
      boolean nothingTighter,
      boolean noSize) {
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.said = said;
    this.inPlay = inPlay;
    this.amounts = amounts;
    this.limits = limits;
    this.nothingTighter = nothingTighter;
    this.noSize = noSize;
  }

  /**
   * An adjustment worth offering.
   *
   * @param worth expected relief less effort and risk, fraction; one for what comes first of all
   * @param likely whether it treats a likely cause, or comes first of all
   * @param slackOnly whether no more may be taken up than was measured to hang loose
   * @param told its amount, or what to measure to get it
   * @param cures the cures it rests on, of causes in play
   * @param rules the rules that advise it
   */
  record Candidate(
      AdjustmentEntry entry,
      double worth,
      boolean likely,
      boolean slackOnly,
      Told told,
      List<Cures> cures,
      List<RuleText> rules) {

    /** Whether it promises more than it costs, or treats what is likely. */
    boolean isWorthwhile() {
      return worth > 0 || likely;
    }

    /** Whether a rule put it before everything else, whatever it would cure. */
    boolean byRule() {
      return cures.isEmpty();
    }

    boolean same(Candidate other) {
      return entry.id().equals(other.entry.id());
    }
  }

  /** An adjustment not to offer now. */
  record SetAside(AdjustmentEntry entry, String because, RuleText rule) {}

  /** What to offer, in order, and what was set aside. */
  record Ranked(List<Candidate> offered, List<SetAside> setAside) {}

  Ranked ranked() {
    Map<String, List<Cures>> byAdjustment =
        knowledge.cures(inPlay, said).stream()
            .collect(groupingBy(Cures::adjustment, LinkedHashMap::new, toList()));
    List<SetAside> setAside = new ArrayList<>();
    List<Candidate> candidates = new ArrayList<>();
    withTakeovers(byAdjustment, setAside)
        .forEach(
            (id, cures) -> {
              AdjustmentEntry entry = entry(id);
              if (isPassedOver(entry, cures)) {
                return;
              }
              SetAside held = heldByRule(entry);
              if (held == null) {
                candidates.add(candidate(entry, cures));
              } else {
                addUnlessSilent(held, setAside);
              }
            });
    candidates.sort(order(candidates));
    // What costs more than it promises is offered only for a likely cause, or for want of better.
    List<Candidate> worthwhile = candidates.stream().filter(Candidate::isWorthwhile).toList();
    List<Candidate> promising =
        worthwhile.isEmpty() ? candidates.stream().limit(1).toList() : worthwhile;
    List<Candidate> offered = new ArrayList<>(firstOfAll(byAdjustment));
    for (Candidate one : promising) {
      if (offered.stream().noneMatch(one::same)) {
        limits
            .against(one, takeoverMayBeNamed(one))
            .ifPresentOrElse(against -> addUnlessSilent(against, setAside), () -> offered.add(one));
      }
    }
    return new Ranked(offered, setAside);
  }

  /**
   * Cures under the adjustments that rules and limits leave them. What is above its limit goes to
   * the adjustment that takes over, unless a rule holds it back: the rule's reason, such as a band
   * that comes before the cups, holds for both.
   */
  private Map<String, List<Cures>> withTakeovers(
      Map<String, List<Cures>> byAdjustment, List<SetAside> setAside) {
    Replacements replacements = new Replacements(said.replaced());
    while (true) {
      Map<String, List<Cures>> left = replacements.applied(byAdjustment);
      boolean changed = false;
      for (Map.Entry<String, List<Cures>> one : left.entrySet()) {
        AdjustmentEntry entry = entry(one.getKey());
        if (entry.takesOver() && heldByRule(entry) == null) {
          Candidate candidate = candidate(entry, one.getValue());
          if (limits.isBeyond(candidate)) {
            replacements.put(entry.beyond(), entry.id());
            changed = true;
            if (candidate.isWorthwhile()) {
              limits
                  .against(candidate, takeoverMayBeNamed(candidate))
                  .ifPresent(against -> addUnlessSilent(against, setAside));
            }
          }
        }
      }
      // Ends: each turn replaces at least one adjustment more.
      if (!changed) {
        return left;
      }
    }
  }

  private boolean takeoverMayBeNamed(Candidate candidate) {
    String beyond = candidate.entry().beyond();
    return beyond != null && !isPassedOver(entry(beyond), candidate.cures());
  }

  /** What tightens is not even named while a caution forbids it. */
  private void addUnlessSilent(SetAside one, List<SetAside> setAside) {
    if (!(one.entry().tightens() && nothingTighter)) {
      setAside.add(one);
    }
  }

  /** What a rule puts before everything else: no relief is weighed against a warning. */
  private List<Candidate> firstOfAll(Map<String, List<Cures>> byAdjustment) {
    Map<String, List<RuleText>> rules =
        said.firstOfAll().stream()
            .collect(
                groupingBy(
                    FirstOfAll::adjustment, TreeMap::new, mapping(FirstOfAll::rule, toList())));
    List<Candidate> first = new ArrayList<>();
    rules.forEach(
        (id, by) -> {
          AdjustmentEntry entry = entry(id);
          if (!(entry.tightens() && tighteningIsHeld())) {
            Told told = amounts.whole(entry, byAdjustment.getOrDefault(id, List.of()));
            // It is done though the numbers see no need: the body says otherwise.
            Told step = limits.isSmall(told.amount()) ? amounts.firstStep(entry) : told;
            first.add(new Candidate(entry, 1, true, false, step, List.of(), by));
          }
        });
    return first;
  }

  private boolean tighteningIsHeld() {
    return !said.tighteningHeld().isEmpty();
  }

  /** A change that a caution forbids is not even named. */
  private boolean isPassedOver(AdjustmentEntry entry, List<Cures> cures) {
    boolean forbidden =
        entry.tightens()
            && nothingTighter
            && !(tighteningIsHeld()
                && said.tighteningHeld().stream().allMatch(TighteningHeld::slackMayGo)
                && amounts.slack(entry, cures).isPresent());
    return forbidden || noSize && entry.does().contains("{size}");
  }

  private SetAside heldByRule(AdjustmentEntry entry) {
    return said.heldBack().stream()
        .filter(held -> held.adjustment().equals(entry.id()))
        .findFirst()
        .map(held -> new SetAside(entry, reason(held.reason()), held.rule()))
        .orElse(null);
  }

  private String reason(String id) {
    return knowledge.catalog().reasons().get(id).says();
  }

  private Candidate candidate(AdjustmentEntry entry, List<Cures> cures) {
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
        isSlackOnly(entry),
        told(entry, cures),
        cures,
        rules);
  }

  private boolean isSlackOnly(AdjustmentEntry entry) {
    return entry.tightens() && tighteningIsHeld();
  }

  /** What would be offered of a change: the slack where no more may be taken up, else all of it. */
  private Told told(AdjustmentEntry entry, List<Cures> cures) {
    return isSlackOnly(entry)
        ? amounts
            .slack(entry, cures)
            .map(slack -> new Told(slack, null))
            .orElseGet(() -> amounts.whole(entry, cures))
        : amounts.whole(entry, cures);
  }

  private AdjustmentEntry entry(String id) {
    return knowledge.catalog().adjustments().get(id);
  }

  /**
   * Among changes that treat a likely cause about as well as the best does, the order of work
   * decides; among the others, and within a stage, worth.
   */
  private Comparator<Candidate> order(List<Candidate> candidates) {
    OrderOfWork order = knowledge.catalog().practice().order();
    double best = candidates.stream().mapToDouble(Candidate::worth).max().orElse(0);
    double enough = Math.max(0, best * knowledge.parameter("order-of-work"));
    ToIntFunction<Candidate> place =
        c ->
            c.likely() && c.worth() > 0 && c.worth() >= enough
                ? order.turn(c.entry().stage())
                : order.stages().size();
    return Comparator.comparingInt(place)
        .thenComparing(Candidate::worth, Comparator.reverseOrder())
        .thenComparing(c -> c.entry().id());
  }
}
