package easewright.rulebook;

import java.util.Arrays;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.drools.model.Drools;
import org.kie.api.runtime.rule.RuleContext;

/** Hears what rules say, but for what is taken out. */
final class MutedConclusions extends Conclusions {
  private final Predicate<Said> heard;

  /**
   * A sentence that a rule says in one fitting.
   *
   * @param rule key of the rule
   * @param call what the sentence calls, such as "shows(band-too-long,usually,straps-dig-in)"
   */
  record Said(String rule, String call) {}

  MutedConclusions(Map<String, RuleText> rules, Predicate<Said> heard) {
    super(rules);
    this.heard = heard;
  }

  /** The call of a sentence, from what the vocabulary says it becomes. */
  static String call(Vocabulary.Sentence sentence, String line) {
    String call = sentence.becomes();
    int blank = 0;
    for (String name : sentence.filled(line).orElseThrow()) {
      call = call.replace("{" + sentence.blanks().get(blank++) + "}", Catalog.idOf(name));
    }
    return call.replaceFirst("^book\\.", "")
        .replaceFirst("drools,? ?", "")
        .replaceAll("[\" ;]", "");
  }

  private boolean hears(Drools drools, String method, Object... names) {
    String call =
        Arrays.stream(names)
            .map(Object::toString)
            .collect(Collectors.joining(",", method + "(", ")"));
    return heard.test(new Said(((RuleContext) drools).getRule().getName(), call));
  }

  @Override
  public void found(Drools drools, String finding, boolean holds) {
    if (hears(drools, "found", finding, holds)) {
      super.found(drools, finding, holds);
    }
  }

  @Override
  public void shows(Drools drools, String cause, String howOften, String sign) {
    if (hears(drools, "shows", cause, howOften, sign)) {
      super.shows(drools, cause, howOften, sign);
    }
  }

  @Override
  public void cures(Drools drools, String adjustment, String howMuch, String cause) {
    if (hears(drools, "cures", adjustment, howMuch, cause)) {
      super.cures(drools, adjustment, howMuch, cause);
    }
  }

  @Override
  public void worsens(Drools drools, String adjustment, String cause) {
    if (hears(drools, "worsens", adjustment, cause)) {
      super.worsens(drools, adjustment, cause);
    }
  }

  @Override
  public void brought(Drools drools, String adjustment, String cause) {
    if (hears(drools, "brought", adjustment, cause)) {
      super.brought(drools, adjustment, cause);
    }
  }

  @Override
  public void caution(Drools drools, String caution) {
    if (hears(drools, "caution", caution)) {
      super.caution(drools, caution);
    }
  }

  @Override
  public void noTightening(Drools drools) {
    if (hears(drools, "noTightening")) {
      super.noTightening(drools);
    }
  }

  @Override
  public void slackOnly(Drools drools, String reason) {
    if (hears(drools, "slackOnly", reason)) {
      super.slackOnly(drools, reason);
    }
  }

  @Override
  public void firstOfAll(Drools drools, String adjustment) {
    if (hears(drools, "firstOfAll", adjustment)) {
      super.firstOfAll(drools, adjustment);
    }
  }

  @Override
  public void holdBack(Drools drools, String adjustment, String reason) {
    if (hears(drools, "holdBack", adjustment, reason)) {
      super.holdBack(drools, adjustment, reason);
    }
  }

  @Override
  public void replace(Drools drools, String adjustment, String other) {
    if (hears(drools, "replace", adjustment, other)) {
      super.replace(drools, adjustment, other);
    }
  }
}
