package easewright.diagnosis;

import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Judged;
import easewright.rulebook.RuleText.Comparison;
import easewright.rulebook.facts.Figure;
import easewright.rulebook.facts.Finding;
import java.util.HashSet;
import java.util.Set;
import org.apache.commons.math3.special.Erf;

/**
 * How far the findings of one fitting are to be trusted: the probability that each figure lies
 * where it was judged to lie, given its error. What is judged from another finding is trusted no
 * more than that one.
 */
final class FindingTrust {
  private final Conclusions said;
  private final Knowledge knowledge;

  FindingTrust(Conclusions said, Knowledge knowledge) {
    this.said = said;
    this.knowledge = knowledge;
  }

  /** Between 0 and the most that any finding is trusted. */
  double of(Judged judged) {
    double trust = knowledge.parameter("trust-most");
    Set<String> figures = new HashSet<>();
    for (Object fact : judged.from()) {
      if (fact instanceof Figure figure && figures.add(figure.id())) {
        trust = Math.min(trust, within(figure, judged));
      } else if (fact instanceof Finding finding) {
        trust = Math.min(trust, of(finding));
      }
    }
    return trust;
  }

  /** A finding is known to the rules only once it was judged, so this comes to an end. */
  private double of(Finding finding) {
    return said.judged().stream()
        .filter(one -> one.finding().equals(finding.id()) && one.holds() == finding.holds())
        .findFirst()
        .map(this::of)
        .orElseThrow();
  }

  /** Beyond one limit a figure is not beyond another, so what lies outside adds up. */
  private double within(Figure figure, Judged judged) {
    double outside = 0;
    for (Comparison comparison : judged.rule().comparisons()) {
      if (comparison.figure().equals(figure.id())) {
        double distance = Math.abs(figure.value() - knowledge.parameter(comparison.parameter()));
        outside += 1 - side(distance, figure.sd());
      }
    }
    return Math.max(0, 1 - outside);
  }

  private static double side(double distance, double sd) {
    return sd == 0 ? 1 : 0.5 * (1 + Erf.erf(distance / (sd * Math.sqrt(2))));
  }
}
