package easewright.diagnosis;

import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.inference.DoubtfulReport;
import easewright.inference.Observation;
import easewright.rulebook.Catalog;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Judged;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One report that counts as evidence: a sign, a finding, an area in which all is well, or what a
 * change did that was tried.
 *
 * @param kind "sign", "finding", "area" or "earlier adjustment"
 * @param name in words
 * @param sure probability, above 0 up to 1, that it was meant; the observation counts it in
 */
record Report(Observation observation, String kind, String name, double sure) {
  /** A report that was surely meant. */
  Report(Observation observation, String kind, String name) {
    this(observation, kind, name, 1);
  }

  /** The id of a report on the wire, in kebab case: "worse-widen-the-straps". */
  static String wireId(String sign) {
    return sign.replace(':', '-');
  }

  /** All evidence of a fitting; red flags and unjudged findings are not evidence of causes. */
  static List<Report> of(
      Fitting fitting, List<EarlierAdjustment> tried, Conclusions said, Knowledge knowledge) {
    List<Report> reports = new ArrayList<>(signs(fitting, knowledge));
    FindingTrust findingTrust = new FindingTrust(said, knowledge);
    Map<String, Judged> judged = new LinkedHashMap<>();
    said.judged().forEach(one -> judged.putIfAbsent(one.finding(), one));
    judged.forEach(
        (id, one) -> {
          double trust = findingTrust.of(one);
          if (trust > 0.5) {
            Observation seen = new Observation(id, one.holds(), trust);
            reports.add(new Report(seen, "finding", knowledge.catalog().nameOf(id)));
          }
        });
    AreaAndChangeReports telling = new AreaAndChangeReports(knowledge);
    reports.addAll(telling.fine(fitting));
    reports.addAll(telling.outcomes(tried, fitting));
    return reports;
  }

  /** One report a sign: seen anywhere counts as seen, and the strongest degree counts. */
  private static List<Report> signs(Fitting fitting, Knowledge knowledge) {
    Catalog catalog = knowledge.catalog();
    Map<String, Report> strongest = new LinkedHashMap<>();
    for (ReportedSign sign : fitting.signs()) {
      if (!catalog.signs().get(sign.id()).redFlag()) {
        Observation seen =
            new Observation(
                sign.id(),
                sign.present(),
                trust(sign, knowledge),
                leakShare(sign, fitting, knowledge));
        String name = catalog.nameOf(sign.id());
        DoubtfulReport.of(knowledge.beforehand(), seen, sign.sure())
            .ifPresent(
                meant ->
                    strongest.merge(
                        sign.id(), new Report(meant, "sign", name, sign.sure()), Report::stronger));
      }
    }
    return new ArrayList<>(strongest.values());
  }

  private static Report stronger(Report one, Report other) {
    Observation a = one.observation();
    Observation b = other.observation();
    if (a.present() != b.present()) {
      return a.present() ? one : other;
    }
    return a.trust() >= b.trust() ? one : other;
  }

  /** What anybody can see or measure at a table is trusted whatever its degree. */
  private static double trust(ReportedSign sign, Knowledge knowledge) {
    return knowledge.catalog().signs().get(sign.id()).fact()
        ? knowledge.parameter("trust-", "fact")
        : Marked.of(sign, knowledge.source()).trust(knowledge);
  }

  private static double leakShare(ReportedSign sign, Fitting fitting, Knowledge knowledge) {
    return sign.present()
        ? Marked.of(sign, knowledge.source()).leakShare(fitting.asksWhatToDo(), knowledge)
        : 1;
  }
}
