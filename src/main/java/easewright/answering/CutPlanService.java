package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.measure.Length;
import easewright.pattern.PatternSheets;
import easewright.plan.CannotBeCut;
import easewright.plan.CutPlan;
import easewright.plan.CutPlanner;
import easewright.plan.CutRequest;
import easewright.request.CutPlanReader;
import easewright.request.Faults;
import easewright.request.FaultyRequest;
import easewright.rulebook.RuleBook;
import jakarta.inject.Singleton;
import java.util.Locale;

/** Plans what to cut, how to lay it, and what to buy. Nothing is kept. */
@Singleton
public class CutPlanService {
  private final RuleBookService rules;
  private final PatternSheets sheets;
  private volatile Planning planning;

  CutPlanService(RuleBookService rules, PatternSheets sheets) {
    this.rules = rules;
    this.sheets = sheets;
  }

  /** What plans by one edition of the rule book. */
  private record Planning(RuleBook book, CutPlanner planner, CutPlanReader reader) {}

  /**
   * The plan for a request. Searching for a layout takes its time, so call it on a worker.
   *
   * @throws FaultyRequest naming every fault of the request
   */
  public CutPlan plan(JsonNode request) {
    Planning planning = planning();
    return rules.inTime(() -> plan(planning, request));
  }

  private static CutPlan plan(Planning planning, JsonNode json) {
    CutRequest request = planning.reader().read(json);
    try {
      return planning.planner().plan(request);
    } catch (CannotBeCut narrow) {
      throw refusal(narrow, request);
    }
  }

  private Planning planning() {
    RuleBook book = rules.edition().book();
    Planning known = planning;
    if (known == null || known.book() != book) {
      CutPlanner planner = new CutPlanner(book.source());
      known = new Planning(book, planner, new CutPlanReader(sheets, planner.adjustments()));
      planning = known;
    }
    return known;
  }

  private static FaultyRequest refusal(CannotBeCut narrow, CutRequest request) {
    Faults faults = new Faults();
    faults.impossible(
        "/cloths/" + narrow.cloth().name().toLowerCase(Locale.ROOT) + "/width",
        "The piece \"" + narrow.piece() + "\" does not fit on this cloth.",
        "As the cloth is laid it has to be at least "
            + Length.ofMm(Math.ceil(narrow.neededMm())).text(request.units())
            + " wide; a wider cloth or an open one may do.");
    return faults.refusal();
  }
}
