package easewright.diagnosis;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;

import easewright.diagnosis.Amounts.Told;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.OrderOfWork;
import easewright.rulebook.RuleText;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntFunction;

/**
 * Ranks adjustments: expected relief less effort and risk, in the trade's order of work. What a
 * rule or a limit holds back is set aside with its reason; what would tighten while a caution
 * forbids it is passed over in silence.
 */
final class Advice {
  private final Knowledge knowledge;
  private final Conclusions said;
  private final List<String> inPlay;
  private final Candidates all;
  private final AmountLimits limits;
  private final Restraints restraints;

  /**
   * @param inPlay causes worth mentioning
   * @param candidates what each adjustment is worth, and how much it changes
   * @param limits which amounts are too small to make, or too large for one change
   * @param restraints what cautions and rules forbid
   */
  Advice(
      Knowledge knowledge,
      Conclusions said,
      List<String> inPlay,
      Candidates candidates,
      AmountLimits limits,
      Restraints restraints) {
    this.knowledge = knowledge;
    this.said = said;
    this.inPlay = inPlay;
    this.all = candidates;
    this.limits = limits;
    this.restraints = restraints;
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
    List<Candidate> withheld = new ArrayList<>();
    withTakeovers(byAdjustment, setAside)
        .forEach(
            (id, cures) -> {
              Candidate candidate = all.candidate(entry(id), cures);
              SetAside held = restraints.heldByRule(candidate.entry());
              if (restraints.isPassedOver(candidate.entry(), cures)) {
                withheld.add(candidate);
              } else if (held != null) {
                withheld.add(candidate);
                addUnlessSilent(held, setAside);
              } else {
                candidates.add(candidate);
              }
            });
    candidates.sort(order(candidates));
    // What costs more than it promises is offered only for a likely cause, or for want of better;
    // not where the better is withheld: straps that may not be shortened are not lengthened.
    List<Candidate> worthwhile = candidates.stream().filter(Candidate::isWorthwhile).toList();
    boolean wanting = worthwhile.isEmpty() && withheld.stream().noneMatch(Candidate::isWorthwhile);
    List<Candidate> promising = wanting ? candidates.stream().limit(1).toList() : worthwhile;
    List<Candidate> offered = new ArrayList<>(all.firstOfAll(byAdjustment));
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
        if (entry.takesOver() && restraints.heldByRule(entry) == null) {
          Candidate candidate = all.candidate(entry, one.getValue());
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
    return beyond != null && !restraints.isPassedOver(entry(beyond), candidate.cures());
  }

  /** What tightens is not even named while a caution forbids it. */
  private void addUnlessSilent(SetAside one, List<SetAside> setAside) {
    if (!restraints.isSilent(one.entry())) {
      setAside.add(one);
    }
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
