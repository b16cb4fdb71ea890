package easewright.rulebook;

import easewright.rulebook.facts.Finding;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.drools.base.InitialFact;
import org.drools.model.Drools;
import org.kie.api.runtime.rule.RuleContext;

/** What the rules have said about one fitting. The rules call it {@code book}. */
public class Conclusions {
  private final Map<String, RuleText> rules;
  private Set<String> foreign = Set.of();
  private final List<Judged> judged = new ArrayList<>();
  private final List<Shows> shows = new ArrayList<>();
  private final List<Cures> cures = new ArrayList<>();
  private final List<Worsens> worsens = new ArrayList<>();
  private final List<Brought> brought = new ArrayList<>();
  private final List<Cautioned> cautions = new ArrayList<>();
  private final List<TighteningHeld> tighteningHeld = new ArrayList<>();
  private final List<FirstOfAll> firstOfAll = new ArrayList<>();
  private final List<HeldBack> heldBack = new ArrayList<>();
  private final List<Replaced> replaced = new ArrayList<>();

  Conclusions(Map<String, RuleText> rules) {
    this.rules = rules;
  }

  /**
   * Leaves out what is said of signs, causes and adjustments that the family does not have: a
   * shared rule may speak of those of several.
   *
   * @param ids what the family does not have
   */
  Conclusions without(Set<String> ids) {
    this.foreign = ids;
    return this;
  }

  private boolean isOurs(String one, String other) {
    return foreign.isEmpty() || !foreign.contains(one) && !foreign.contains(other);
  }

  /** A finding stated, with the facts it was judged from. */
  public record Judged(String finding, boolean holds, List<Object> from, RuleText rule) {}

  /** How often a cause shows as a sign or finding: a word of the parameters. */
  public record Shows(String cause, String howOften, String sign, RuleText rule) {}

  /** How much of a cause an adjustment takes away: a word of the parameters. */
  public record Cures(String adjustment, String howMuch, String cause, RuleText rule) {}

  /** An adjustment that makes a cause worse. */
  public record Worsens(String adjustment, String cause, RuleText rule) {}

  /**
   * A cause that a helpful change has brought by going too far: its having helped agrees with this
   * cause, and nothing having become worse says nothing against it.
   */
  public record Brought(String adjustment, String cause, RuleText rule) {}

  /** A caution, with the facts that raised it. */
  public record Cautioned(String caution, List<Object> from, RuleText rule) {}

  /**
   * No adjustment that tightens may be offered.
   *
   * @param reason the catalog's reason, or null where the rule's caution is the reason
   * @param slackMayGo whether what was measured to hang loose may be taken up, and no more
   */
  public record TighteningHeld(String reason, boolean slackMayGo, RuleText rule) {}

  /** An adjustment that comes before all others, whatever the causes. */
  public record FirstOfAll(String adjustment, RuleText rule) {}

  /** An adjustment not to be offered, and the catalog's reason. */
  public record HeldBack(String adjustment, String reason, RuleText rule) {}

  /** An adjustment to offer in place of another. */
  public record Replaced(String adjustment, String other, RuleText rule) {}

  public List<Judged> judged() {
    return judged;
  }

  public List<Shows> shows() {
    return shows;
  }

  public List<Cures> cures() {
    return cures;
  }

  public List<Worsens> worsens() {
    return worsens;
  }

  public List<Brought> brought() {
    return brought;
  }

  public List<Cautioned> cautions() {
    return cautions;
  }

  /** Why nothing tighter is advised; empty when tightening may be advised. */
  public List<TighteningHeld> tighteningHeld() {
    return tighteningHeld;
  }

  /** The rules that forbid advising anything tighter, with or without taking up slack. */
  public List<RuleText> noTightening() {
    return tighteningHeld.stream().map(TighteningHeld::rule).toList();
  }

  public List<FirstOfAll> firstOfAll() {
    return firstOfAll;
  }

  public List<HeldBack> heldBack() {
    return heldBack;
  }

  public List<Replaced> replaced() {
    return replaced;
  }

  /** Called by rules. */
  public void found(Drools drools, String finding, boolean holds) {
    judged.add(new Judged(finding, holds, from(drools), rule(drools)));
    drools.insert(new Finding(finding, holds));
  }

  /** Called by rules. */
  public void shows(Drools drools, String cause, String howOften, String sign) {
    if (isOurs(cause, sign)) {
      shows.add(new Shows(cause, howOften, sign, rule(drools)));
    }
  }

  /** Called by rules. */
  public void cures(Drools drools, String adjustment, String howMuch, String cause) {
    if (isOurs(adjustment, cause)) {
      cures.add(new Cures(adjustment, howMuch, cause, rule(drools)));
    }
  }

  /** Called by rules. */
  public void worsens(Drools drools, String adjustment, String cause) {
    if (isOurs(adjustment, cause)) {
      worsens.add(new Worsens(adjustment, cause, rule(drools)));
    }
  }

  /** Called by rules. */
  public void brought(Drools drools, String adjustment, String cause) {
    if (isOurs(adjustment, cause)) {
      brought.add(new Brought(adjustment, cause, rule(drools)));
    }
  }

  /** Called by rules. */
  public void caution(Drools drools, String caution) {
    cautions.add(new Cautioned(caution, from(drools), rule(drools)));
  }

  /** Called by rules. */
  public void noTightening(Drools drools) {
    tighteningHeld.add(new TighteningHeld(null, false, rule(drools)));
  }

  /** Called by rules. */
  public void slackOnly(Drools drools, String reason) {
    tighteningHeld.add(new TighteningHeld(reason, true, rule(drools)));
  }

  /** Called by rules. */
  public void firstOfAll(Drools drools, String adjustment) {
    if (isOurs(adjustment, adjustment)) {
      firstOfAll.add(new FirstOfAll(adjustment, rule(drools)));
    }
  }

  /** Called by rules. */
  public void holdBack(Drools drools, String adjustment, String reason) {
    if (isOurs(adjustment, adjustment)) {
      heldBack.add(new HeldBack(adjustment, reason, rule(drools)));
    }
  }

  /** Called by rules. */
  public void replace(Drools drools, String adjustment, String other) {
    if (isOurs(adjustment, other)) {
      replaced.add(new Replaced(adjustment, other, rule(drools)));
    }
  }

  private RuleText rule(Drools drools) {
    return rules.get(((RuleContext) drools).getRule().getName());
  }

  private static List<Object> from(Drools drools) {
    List<Object> facts = ((RuleContext) drools).getMatch().getObjects();
    // A rule without a condition is matched by a fact of the engine's own.
    return facts.stream().filter(fact -> !(fact instanceof InitialFact)).toList();
  }
}
