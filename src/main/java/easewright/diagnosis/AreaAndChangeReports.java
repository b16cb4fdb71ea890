package easewright.diagnosis;

import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import easewright.fitting.Trial;
import easewright.inference.Observation;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a wearer tells of areas and of changes, as evidence. */
final class AreaAndChangeReports {
  private static final String KIND = "earlier adjustment";

  private final Knowledge knowledge;

  AreaAndChangeReports(Knowledge knowledge) {
    this.knowledge = knowledge;
  }

  /** One denial for each area in which all is well. */
  List<Report> fine(Fitting fitting) {
    double trust = knowledge.parameter("trust-denied");
    return fitting.fine().stream()
        .map(
            area ->
                new Report(
                    new Observation(AreaAndChangeLinks.amiss(area), false, trust),
                    "area",
                    say("area-amiss", "area", knowledge.catalog().practice().area(area))))
        .toList();
  }

  /** The last report of each change of which anything is known. */
  static Collection<EarlierAdjustment> last(List<EarlierAdjustment> tried) {
    Map<String, EarlierAdjustment> last = new LinkedHashMap<>();
    tried.stream()
        .filter(one -> one.outcome() != null || !one.better().isEmpty() || !one.worse().isEmpty())
        .forEach(one -> last.put(one.adjustment(), one));
    return last.values();
  }

  /** Whether a change helped, and whether it hurt; signs that were named count beside the whole. */
  List<Report> outcomes(List<EarlierAdjustment> tried, Fitting fitting) {
    Set<String> right = TrialSteps.right(fitting, knowledge.catalog());
    List<Report> reports = new ArrayList<>();
    for (EarlierAdjustment one : last(tried)) {
      String name = knowledge.catalog().nameOf(one.adjustment());
      boolean helped = !one.better().isEmpty() || "better".equals(one.outcome());
      boolean worse = !one.worse().isEmpty() || "worse".equals(one.outcome());
      if (helped || one.outcome() != null) {
        reports.add(
            helped && right.contains(one.adjustment())
                ? held(one.adjustment(), "trust-right", "trial-right")
                : outcome(Knowledge.helped(one.adjustment()), "earlier-helped", helped, name));
      }
      if (worse || one.outcome() != null) {
        reports.add(outcome(Knowledge.worse(one.adjustment()), "earlier-worse", worse, name));
      }
    }
    fitting.trials().stream()
        .filter(Trial::isOnlyMeasured)
        .map(Trial::adjustment)
        .distinct()
        .filter(id -> last(tried).stream().noneMatch(one -> one.adjustment().equals(id)))
        .map(id -> held(id, "trust-only-measured", "trial-measured"))
        .forEach(reports::add);
    return reports;
  }

  /**
   * The fault was gone with it: hardly ever by chance, and seen at once by whoever held it.
   * Somebody who measures how much a change takes is looking at the fault too, but has not proved
   * it.
   */
  private Report held(String adjustment, String trust, String sentence) {
    return new Report(
        new Observation(
            Knowledge.helped(adjustment),
            true,
            knowledge.parameter(trust),
            knowledge.parameter("leak-share-right")),
        KIND,
        say(sentence, "adjustment", knowledge.catalog().nameOf(adjustment)));
  }

  private Report outcome(String sign, String sentence, boolean so, String adjustment) {
    return new Report(
        new Observation(sign, so, knowledge.parameter("trust-outcome")),
        KIND,
        say(so ? sentence : sentence + "-not", "adjustment", adjustment));
  }

  private String say(String key, String blank, String value) {
    return knowledge.source().wording().say(key, blank, value);
  }
}
