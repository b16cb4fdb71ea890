package easewright.diagnosis;

import easewright.diagnosis.inference.Observation;
import easewright.rulebook.Catalog;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Judged;
import easewright.rulebook.RuleText.Comparison;
import easewright.rulebook.facts.Figure;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.special.Erf;

/**
 * One report that counts as evidence: a sign, a finding or what an earlier change did.
 *
 * @param kind "sign", "finding" or "earlier adjustment"
 * @param name in words
 */
record Report(Observation observation, String kind, String name) {

  /** All evidence of a fitting; red flags and unjudged findings are not evidence of causes. */
  static List<Report> of(Fitting fitting, Conclusions said, Knowledge knowledge) {
    List<Report> reports = new ArrayList<>(signs(fitting, knowledge));
    Map<String, Judged> judged = new LinkedHashMap<>();
    said.judged().forEach(one -> judged.putIfAbsent(one.finding(), one));
    judged.forEach(
        (id, one) -> {
          double trust = trust(one, knowledge);
          if (trust > 0.5) {
            Observation seen = new Observation(id, one.holds(), trust);
            reports.add(new Report(seen, "finding", knowledge.catalog().nameOf(id)));
          }
        });
    reports.addAll(earlier(fitting, knowledge));
    return reports;
  }

  /**
   * How far a finding is to be trusted: the probability that its figure lies on the judged side of
   * the limit, given the figure's error.
   */
  static double trust(Judged judged, Knowledge knowledge) {
    double most = knowledge.parameter("trust-most");
    double trust = most;
    for (Comparison comparison : judged.rule().comparisons()) {
      for (Object fact : judged.from()) {
        if (fact instanceof Figure figure && figure.id().equals(comparison.figure())) {
          double distance = Math.abs(figure.value() - knowledge.parameter(comparison.parameter()));
          trust = Math.min(trust, side(distance, figure.sd()));
        }
      }
    }
    return trust;
  }

  private static double side(double distance, double sd) {
    return sd == 0 ? 1 : 0.5 * (1 + Erf.erf(distance / (sd * Math.sqrt(2))));
  }

  /** One report a sign: seen anywhere counts as seen, and the strongest degree counts. */
  private static List<Report> signs(Fitting fitting, Knowledge knowledge) {
    Catalog catalog = knowledge.catalog();
    Map<String, Observation> strongest = new LinkedHashMap<>();
    for (ReportedSign sign : fitting.signs()) {
      if (!catalog.signs().get(sign.id()).redFlag()) {
        Observation seen = new Observation(sign.id(), sign.present(), trust(sign, knowledge));
        strongest.merge(sign.id(), seen, Report::stronger);
      }
    }
    List<Report> reports = new ArrayList<>();
    strongest.values().forEach(o -> reports.add(new Report(o, "sign", catalog.nameOf(o.sign()))));
    return reports;
  }

  private static Observation stronger(Observation a, Observation b) {
    if (a.present() != b.present()) {
      return a.present() ? a : b;
    }
    return a.trust() >= b.trust() ? a : b;
  }

  private static double trust(ReportedSign sign, Knowledge knowledge) {
    String word = !sign.present() ? "denied" : sign.degree() == null ? "unstated" : sign.degree();
    return knowledge.parameter("trust-", word);
  }

  private static List<Report> earlier(Fitting fitting, Knowledge knowledge) {
    double trust = knowledge.parameter("trust-outcome");
    Map<String, EarlierAdjustment> last = new LinkedHashMap<>();
    fitting.earlier().stream()
        .filter(one -> one.outcome() != null)
        .forEach(one -> last.put(one.adjustment(), one));
    List<Report> reports = new ArrayList<>();
    for (EarlierAdjustment one : last.values()) {
      String name = knowledge.catalog().nameOf(one.adjustment());
      boolean helped = one.outcome().equals("better");
      boolean worse = one.outcome().equals("worse");
      reports.add(
          outcome(
              new Observation(Knowledge.helped(one.adjustment()), helped, trust),
              helped ? "earlier-helped" : "earlier-helped-not",
              name,
              knowledge));
      reports.add(
          outcome(
              new Observation(Knowledge.worse(one.adjustment()), worse, trust),
              worse ? "earlier-worse" : "earlier-worse-not",
              name,
              knowledge));
    }
    return reports;
  }

  private static Report outcome(
      Observation seen, String sentence, String adjustment, Knowledge knowledge) {
    return new Report(
        seen,
        "earlier adjustment",
        knowledge.source().wording().say(sentence, "adjustment", adjustment));
  }
}
