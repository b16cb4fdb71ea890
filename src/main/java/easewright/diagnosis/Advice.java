package easewright.diagnosis;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toList;

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
import java.util.function.BiPredicate;
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
  private final BiPredicate<AdjustmentEntry, List<Cures>> slack;
  private final boolean nothingTighter;
  private final boolean noSize;

  /**
   * @param inPlay causes worth mentioning
   * @param slack whether what an adjustment takes up for these cures was measured to hang loose
   * @param nothingTighter whether changes that tighten are passed over in silence
   * @param noSize whether changes that name the size measured are passed over in silence
   */
  Advice(
      Knowledge knowledge,
      Posterior posterior,
      Conclusions said,
      List<String> inPlay,
      BiPredicate<AdjustmentEntry, List<Cures>> slack,
      boolean nothingTighter,
      boolean noSize) {
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.said = said;
    this.inPlay = inPlay;
    this.slack = slack;
    this.nothingTighter = nothingTighter;
    this.noSize = noSize;
  }

  /**
   * An adjustment worth offering.
   *
   * @param worth expected relief less effort and risk, fraction; one for what comes first of all
   * @param likely whether it treats a likely cause, or comes first of all
   * @param slackOnly whether no more may be taken up than was measured to hang loose
   * @param cures the cures it rests on, of causes in play
   * @param rules the rules that advise it
   */
  record Candidate(
      AdjustmentEntry entry,
      double worth,
      boolean likely,
      boolean slackOnly,
      List<Cures> cures,
      List<RuleText> rules) {

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
    new Replacements(said.replaced())
        .applied(byAdjustment)
        .forEach(
            (id, cures) -> {
              AdjustmentEntry entry = knowledge.catalog().adjustments().get(id);
              if (isPassedOver(entry, cures)) {
                return;
              }
              SetAside aside = aside(entry);
              if (aside == null) {
                candidates.add(candidate(entry, cures));
              } else if (!(entry.tightens() && tighteningIsHeld())) {
                setAside.add(aside);
              }
            });
    candidates.sort(order(candidates));
    // What costs more than it promises is offered only for a likely cause, or for want of better.
    List<Candidate> worthwhile =
        candidates.stream().filter(c -> c.worth() > 0 || c.likely()).toList();
    List<Candidate> offered =
        worthwhile.isEmpty() ? candidates.stream().limit(1).toList() : worthwhile;
    List<Candidate> all = new ArrayList<>(firstOfAll());
    offered.stream().filter(c -> all.stream().noneMatch(c::same)).forEach(all::add);
    return new Ranked(all, setAside);
  }

  /** What a rule puts before everything else: no relief is weighed against a warning. */
  private List<Candidate> firstOfAll() {
    Map<String, List<RuleText>> rules =
        said.firstOfAll().stream()
            .collect(
                groupingBy(
                    FirstOfAll::adjustment, TreeMap::new, mapping(FirstOfAll::rule, toList())));
    List<Candidate> first = new ArrayList<>();
    rules.forEach(
        (id, by) -> {
          AdjustmentEntry entry = knowledge.catalog().adjustments().get(id);
          if (!(entry.tightens() && tighteningIsHeld())) {
            first.add(new Candidate(entry, 1, true, false, List.of(), by));
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
                && slack.test(entry, cures));
    return forbidden || noSize && entry.does().contains("{size}");
  }

  private SetAside aside(AdjustmentEntry entry) {
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
    boolean slackOnly = entry.tightens() && tighteningIsHeld();
    return new Candidate(
        entry, worth, most >= knowledge.parameter("likely"), slackOnly, cures, rules);
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
