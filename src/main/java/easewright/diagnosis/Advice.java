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
import java.util.Optional;
import java.util.function.ToIntFunction;

/**
 * Ranks adjustments: expected relief less effort and risk, in the trade's order of work. What costs
 * more than it promises is not offered, even for want of better. What a rule or a limit holds back,
 * or what is hard to undo and not sure enough, is set aside with its reason; what would tighten
 * while a caution forbids it is passed over in silence.
 */
final class Advice {
  private final Knowledge knowledge;
  private final Conclusions said;
  private final List<String> inPlay;
  private final Candidates all;
  private final AmountLimits limits;
  private final Restraints restraints;
  private final CureAmounts amounts;
  private final EarlierOutcomes tried;
  private final Certainty certainty;

  /**
   * @param inPlay causes worth mentioning
   * @param candidates what each adjustment is worth, and how much it changes
   * @param limits which amounts are too small to make, or too large for one change
   * @param restraints what cautions and rules forbid
   * @param amounts how much an adjustment changes
   * @param tried what was changed before
   * @param certainty how sure a change must be of the cause it treats
   */
  Advice(
      Knowledge knowledge,
      Conclusions said,
      List<String> inPlay,
      Candidates candidates,
      AmountLimits limits,
      Restraints restraints,
      CureAmounts amounts,
      EarlierOutcomes tried,
      Certainty certainty) {
    this.knowledge = knowledge;
    this.said = said;
    this.inPlay = inPlay;
    this.all = candidates;
    this.limits = limits;
    this.restraints = restraints;
    this.amounts = amounts;
    this.tried = tried;
    this.certainty = certainty;
  }

  /**
   * An adjustment worth offering.
   *
   * @param worth expected relief less effort and risk, fraction; one for what comes first of all
   * @param likely whether it treats a likely cause, or comes first of all
   * @param sure probability of the likeliest cause it treats; one for what comes first of all
   * @param slackOnly whether no more may be taken up than was measured to hang loose
   * @param undone the change it puts back; null where it puts none back
   * @param told its amount, or what to measure to get it
   * @param cures the cures it rests on, of causes in play
   * @param rules the rules that advise it
   */
  record Candidate(
      AdjustmentEntry entry,
      double worth,
      boolean likely,
      double sure,
      boolean slackOnly,
      AdjustmentEntry undone,
      Told told,
      List<Cures> cures,
      List<RuleText> rules) {

    /** Whether it promises more than it costs. */
    boolean isWorthwhile() {
      return worth > 0;
    }

    /** Whether a rule put it before everything else, whatever it would cure. */
    boolean byRule() {
      return cures.isEmpty();
    }

    /**
     * Whether it makes anything closer, firmer or smaller, or may: by more than was measured to
     * hang loose, or by putting back what gave room.
     */
    boolean tightens() {
      return undone == null ? entry.tightens() && !slackOnly : !undone.tightens();
    }

    /** The same with another amount. */
    Candidate with(Told other) {
      return new Candidate(entry, worth, likely, sure, slackOnly, undone, other, cures, rules);
    }

    boolean same(Candidate other) {
      return entry.id().equals(other.entry.id());
    }
  }

  /** An adjustment not to offer now. */
  record SetAside(AdjustmentEntry entry, String because, RuleText rule) {}

  /**
   * What to offer, in order, and what was set aside.
   *
   * @param unsure what nothing forbids, and what is left out only because it costs too much for
   *     what is known
   */
  record Ranked(List<Candidate> offered, List<SetAside> setAside, List<Candidate> unsure) {

    /** What to do first; null where nothing is offered. */
    Candidate first() {
      return offered.isEmpty() ? null : offered.get(0);
    }
  }

  Ranked ranked() {
    Map<String, List<Cures>> byAdjustment =
        knowledge.cures(inPlay, said).stream()
            .collect(groupingBy(Cures::adjustment, LinkedHashMap::new, toList()));
    List<SetAside> setAside = new ArrayList<>();
    List<Candidate> candidates = new ArrayList<>();
    List<Candidate> unsure = new ArrayList<>();
    withTakeovers(byAdjustment, setAside)
        .forEach(
            (id, cures) -> {
              Candidate candidate = all.candidate(entry(id), cures);
              SetAside held = restraints.heldByRule(candidate.entry());
              if (restraints.isPassedOver(candidate.entry(), cures)) {
                return;
              }
              if (held != null) {
                addUnlessSilent(held, setAside);
                return;
              }
              Optional<SetAside> failed = tried.against(candidate);
              Optional<SetAside> against = failed.or(() -> certainty.against(candidate));
              if (failed.isEmpty() && (against.isPresent() || !candidate.isWorthwhile())) {
                unsure.add(candidate);
              }
              if (candidate.isWorthwhile()) {
                against.ifPresentOrElse(
                    one -> addUnlessSilent(one, setAside), () -> candidates.add(candidate));
              }
            });
    candidates.sort(order(candidates));
    List<Candidate> offered = new ArrayList<>(all.firstOfAll(byAdjustment));
    for (Candidate one : candidates) {
      if (offered.stream().noneMatch(one::same)) {
        limits
            .asItIs(one)
            .ifPresentOrElse(
                against -> addUnlessSilent(against, setAside), () -> offered.add(withinLimit(one)));
      }
    }
    return new Ranked(offered, setAside, unsure);
  }

  /**
   * Cures under the adjustments that rules and limits leave them. What is above its limit goes to
   * the adjustment that takes over, unless a rule holds either back: the rule's reason, such as a
   * band that comes before the cups, holds for both.
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
          if (limits.isBeyond(candidate) && beyondMayBeNamed(candidate)) {
            replacements.put(entry.beyond(), entry.id());
            changed = true;
            if (candidate.isWorthwhile()) {
              addUnlessSilent(limits.beyond(candidate), setAside);
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

  private Candidate withinLimit(Candidate one) {
    return limits.isBeyond(one)
        ? limits.upTo(one, !one.entry().takesOver() && beyondMayBeNamed(one), amounts)
        : one;
  }

  /** What is itself held back takes nothing over. */
  private boolean beyondMayBeNamed(Candidate candidate) {
    AdjustmentEntry beyond = entry(candidate.entry().beyond());
    return restraints.heldByRule(beyond) == null
        && !restraints.isPassedOver(beyond, candidate.cures());
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
   * decides; among the others, and within a stage, what was tried and sat right, then worth.
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
        .thenComparing(c -> !tried.satRight(c.entry()))
        .thenComparing(Candidate::worth, Comparator.reverseOrder())
        .thenComparing(c -> c.entry().id());
  }
}
