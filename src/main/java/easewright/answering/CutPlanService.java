package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CautionNote;
import easewright.diagnosis.Answer.Understood;
import easewright.measure.Length;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.plan.CannotBeCut;
import easewright.plan.CutPlan;
import easewright.plan.CutPlanner;
import easewright.plan.CutRequest;
import easewright.request.CutPlanReader;
import easewright.request.Faults;
import easewright.request.FaultyRequest;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Plans what to cut, how to lay it, and what to buy. Nothing is stored. */
@Singleton
public class CutPlanService {
  private final RuleBookService rules;
  private final PatternSheets sheets;
  private volatile Planning planning;

  CutPlanService(RuleBookService rules, PatternSheets sheets) {
    this.rules = rules;
    this.sheets = sheets;
  }

  /** Ids of the pattern sheets that are offered. */
  public List<String> sheets() {
    return sheets.offered().stream().map(PatternSheet::id).toList();
  }

  /** The planning objects of one family, in one edition of the rule book. */
  private record Planning(RuleBook book, CutPlanner planner, CutPlanReader reader) {}

  /**
   * The plan for a request. Call it on a worker thread, since the layout search is slow. If the
   * answer to its fitting leaves out anything tighter, so does the plan.
   *
   * @throws FaultyRequest naming every fault of the request
   */
  public CutPlan plan(JsonNode request) {
    Planning planning = planning(request);
    return rules.inTime(() -> plan(planning, request));
  }

  private CutPlan plan(Planning planning, JsonNode json) {
    CutRequest request = planning.reader().read(json);
    Optional<Answer> fitting = fitting(json);
    Optional<String> notNow = fitting.map(Answer::notNow);
    if (notNow.isPresent()) {
      refuseTighter(planning.book().source(), request, fitting.get());
    }
    try {
      CutPlan plan = planning.planner().plan(request);
      return notNow.isEmpty() ? plan : plan.cautioning(cautions(fitting.get()));
    } catch (CannotBeCut narrow) {
      throw refusal(planning.book().source().wording(), narrow, request);
    }
  }

  private Optional<Answer> fitting(JsonNode request) {
    if (!request.has(CutPlanReader.FITTING)) {
      return Optional.empty();
    }
    try {
      return Optional.of(rules.edition().answer(request.get(CutPlanReader.FITTING)));
    } catch (FaultyRequest faulty) {
      throw faulty.under("/" + CutPlanReader.FITTING);
    }
  }

  /** The safety cautions, each danger in its own words, and what is therefore left out. */
  private static List<String> cautions(Answer fitting) {
    return Stream.concat(
            fitting.cautions().stream()
                .filter(CautionNote::isDanger)
                .map(danger -> danger.says() + " " + danger.doNow()),
            Stream.of(fitting.notNow()))
        .toList();
  }

  private static void refuseTighter(RuleBookSource book, CutRequest request, Answer fitting) {
    Faults faults = new Faults();
    for (int i = 0; i < request.accepted().size(); i++) {
      AdjustmentEntry change =
          book.catalog().adjustments().get(request.accepted().get(i).adjustment());
      if (change.tightens()) {
        faults.impossible(
            "/accepted/" + i,
            fitting.notNow(),
            book.wording().say("fault-tighter-change-remedy", "change", change.name()));
      }
    }
    Understood worn = fitting.understood();
    if (request.sheet().id().equals(worn.sheet()) && worn.sizeCut() != null) {
      for (String size : new TreeSet<>(List.of(request.upperSize(), request.lowerSize()))) {
        if (request.sheet().isTighter(size, worn.sizeCut())) {
          faults.impossible(
              request.upperSize().equals(request.lowerSize()) ? "/size" : "/sizes",
              fitting.notNow(),
              book.wording()
                  .say("fault-tighter-size-remedy", "worn", worn.sizeCut(), "size", size));
        }
      }
    }
    faults.refuse();
  }

  /** By the names of the request's family; kept until the book changes. */
  private Planning planning(JsonNode request) {
    Edition edition = rules.edition();
    RuleBook book = edition.book().families().get(edition.families().of(request));
    Planning known = planning;
    if (known == null || known.book() != book) {
      CutPlanner planner = new CutPlanner(book.source());
      known =
          new Planning(
              book, planner, new CutPlanReader(sheets, planner.adjustments(), book.source()));
      planning = known;
    }
    return known;
  }

  private static FaultyRequest refusal(Wording wording, CannotBeCut narrow, CutRequest request) {
    Faults faults = new Faults();
    faults.impossible(
        "/cloths/" + narrow.cloth().name().toLowerCase(Locale.ROOT) + "/width",
        wording.say("fault-piece-too-wide", "piece", narrow.piece()),
        wording.say(
            "fault-piece-too-wide-remedy",
            "width",
            Length.ofMm(Math.ceil(narrow.neededMm())).text(request.units())));
    return faults.refusal();
  }
}
