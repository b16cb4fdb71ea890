package easewright.diagnosis;

import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.inference.Posterior;
import easewright.rulebook.Catalog;
import easewright.rulebook.Conclusions;
import easewright.rulebook.RuleBookSource;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Decides whether nothing reported is a fault: what was seen often shows with nothing wrong and is
 * no more than that, no cause is in play, and no number speaks of a fault. A wearer who asks what
 * to do about a sign is told that it is nothing only where it shows with most wearers.
 */
final class Soundness {
  private final Fitting fitting;
  private final Knowledge knowledge;
  private final Conclusions said;
  private final Posterior posterior;

  Soundness(Fitting fitting, Knowledge knowledge, Conclusions said, Posterior posterior) {
    this.fitting = fitting;
    this.knowledge = knowledge;
    this.said = said;
    this.posterior = posterior;
  }

  /**
   * That nothing reported is a fault, in a sentence; null where something may be one.
   *
   * @param open whether a cause is in play, or something stated was not understood
   */
  String noFault(boolean open) {
    boolean sound =
        !open
            && !fitting.signs().isEmpty()
            && said.firstOfAll().isEmpty()
            && fitting.signs().stream().allMatch(this::isHarmless)
            && said.judged().stream().noneMatch(this::speaksOfAFault)
            && nothingIsAsLikelyAsBefore();
    if (!sound) {
      return null;
    }
    List<String> seen =
        fitting.signs().stream()
            .filter(ReportedSign::present)
            .map(sign -> knowledge.catalog().nameOf(sign.id()))
            .distinct()
            .collect(Collectors.toList());
    return seen.isEmpty()
        ? knowledge.source().wording().say("no-fault")
        : knowledge.source().wording().say("no-fault-signs", "signs", String.join(", ", seen));
  }

  private boolean isHarmless(ReportedSign sign) {
    return isHarmless(sign, fitting, knowledge.source());
  }

  /** Whether it is absent, or often so with nothing wrong and no more of it than is usual then. */
  static boolean isHarmless(ReportedSign sign, Fitting fitting, RuleBookSource source) {
    Catalog.SignEntry entry = source.catalog().signs().get(sign.id());
    return !sign.present()
        || !entry.redFlag()
            && Marked.of(sign, source).isHarmless(entry.withoutFault(), fitting.asksWhatToDo());
  }

  /** Some findings hold where all is well: that a volume is large, that a band is firm. */
  private boolean speaksOfAFault(Conclusions.Judged judged) {
    String withoutFault = knowledge.catalog().findings().get(judged.finding()).withoutFault();
    return judged.holds() && !"often".equals(withoutFault);
  }

  private boolean nothingIsAsLikelyAsBefore() {
    return posterior.nothing()
        >= knowledge.parameter("no-fault-from") * knowledge.parameter("nothing-wrong");
  }
}
