package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.CautionNote;
import easewright.diagnosis.Answer.FindingNote;
import easewright.diagnosis.Answer.SignNote;
import easewright.diagnosis.Diagnosis;
import easewright.pattern.PatternSheets;
import easewright.request.FaultyRequest;
import easewright.request.FittingReader;
import easewright.request.KnownFamilies;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RulePage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Runs the fenced cases of rule pages against a diagnosis. */
public final class PageCases {
  /**
   * Smallest factor by which its odds must change for a cause to count as likelier or less likely.
   */
  private static final double MATTERS = 1.1;

  private final FittingReader reader;
  private final Diagnosis diagnosis;

  /** Uses the diagnosis of this book. */
  public PageCases(RuleBook book, PatternSheets sheets) {
    this.reader = new FittingReader(KnownFamilies.of(book.whole(), sheets));
    this.diagnosis = new Diagnosis(book, sheets.shipped());
  }

  /** Uses a diagnosis at hand, for cases whose fittings are read. */
  public PageCases(FittingReader reader, Diagnosis diagnosis) {
    this.reader = reader;
    this.diagnosis = diagnosis;
  }

  /**
   * The location of a case: "sports-bra/band/band-too-long.md:14, speaks: Rides up at the back".
   */
  public static String place(RulePage page, RulePage.RuleCase one) {
    return page.path() + ":" + one.line() + ", " + one.kind() + ": " + one.heading();
  }

  /**
   * The differences between case and answer, one per line, each with the actual value; empty if it
   * passes.
   */
  public List<String> wrong(RulePage.RuleCase one) {
    try {
      return wrong(CaseTrials.of(one, reader));
    } catch (FaultyRequest refused) {
      return refused.faults().stream()
          .map(fault -> "given" + fault.pointer() + ": " + fault.problem() + " " + fault.remedy())
          .toList();
    }
  }

  /** The same for a case whose fittings are read. */
  public List<String> wrong(CaseTrials one) {
    List<String> wrong = new ArrayList<>();
    int checks = 0;
    for (CaseTrials.Trial trial : one.trials()) {
      String with = trial.added().isEmpty() ? "" : "with " + trial.added() + ": ";
      Compared compared = new Compared(trial);
      for (Map.Entry<String, JsonNode> expected : one.written().then().properties()) {
        for (String id : ids(expected.getValue())) {
          checks++;
          compared
              .came(expected.getKey(), id)
              .ifPresent(
                  came ->
                      wrong.add(with + "expected " + expected.getKey() + ": " + id + "; " + came));
        }
      }
    }
    return checks == 0 ? List.of("The case expects nothing.") : wrong;
  }

  /** One fitting of a case, answered or weighed only as far as the case asks. */
  private final class Compared {
    private final CaseTrials.Trial trial;
    private Answer answer;
    private Map<String, Double> before;
    private Map<String, Double> after;

    private Compared(CaseTrials.Trial trial) {
      this.trial = trial;
    }

    /** The actual value if it differs from the expected one. */
    Optional<String> came(String what, String id) {
      if (what.equals("raises") || what.equals("lowers")) {
        return moved(id, what.equals("raises"));
      }
      if (answer == null) {
        answer = diagnosis.answer(trial.fitting());
      }
      return PageCases.came(answer, what, id);
    }

    private Optional<String> moved(String cause, boolean up) {
      if (trial.added().isEmpty()) {
        return Optional.of("the case has no \"with each\" that could change anything");
      }
      if (before == null) {
        before =
            trial.without() == null
                ? diagnosis.causesBefore(trial.fitting().family())
                : diagnosis.causes(trial.without());
        after = diagnosis.causes(trial.fitting());
      }
      double ratio = odds(after.get(cause)) / odds(before.get(cause));
      if (up ? ratio >= MATTERS : ratio <= 1 / MATTERS) {
        return Optional.empty();
      }
      return Optional.of(
          "its probability went from %.4f to %.4f".formatted(before.get(cause), after.get(cause)));
    }
  }

  private static double odds(double probability) {
    return probability / (1 - probability);
  }

  private static List<String> ids(JsonNode node) {
    List<String> ids = new ArrayList<>();
    if (node.isArray()) {
      node.forEach(id -> ids.add(id.asText()));
    } else {
      ids.add(node.asText());
    }
    return ids;
  }

  /** The actual value if it differs from the expected one. */
  private static Optional<String> came(Answer answer, String what, String id) {
    List<String> causes = answer.causes().stream().map(CauseNote::id).toList();
    List<String> advised = answer.adjustments().stream().map(AdjustmentNote::id).toList();
    List<String> cautions = answer.cautions().stream().map(CautionNote::id).toList();
    Optional<Boolean> holds =
        answer.findings().stream()
            .filter(finding -> finding.id().equals(id))
            .map(FindingNote::holds)
            .findFirst();
    boolean so =
        switch (what) {
          case "first cause" -> !causes.isEmpty() && causes.get(0).equals(id);
          case "in play" -> causes.contains(id);
          case "not in play" -> !causes.contains(id);
          case "holds" -> holds.equals(Optional.of(true));
          case "holds not" -> holds.equals(Optional.of(false));
          case "not judged" -> holds.isEmpty();
          case "caution" -> cautions.contains(id);
          case "stops tightening" ->
              answer.cautions().stream()
                  .anyMatch(caution -> caution.id().equals(id) && caution.stopsTightening());
          case "no caution" -> !cautions.contains(id);
          case "advises" -> advised.contains(id);
          case "advises first" -> !advised.isEmpty() && advised.get(0).equals(id);
          case "does not advise" -> !advised.contains(id);
          case "tightening" ->
              id.equals("none")
                  && answer.adjustments().stream().noneMatch(AdjustmentNote::tightens);
          case "slack only" ->
              answer.adjustments().stream()
                  .anyMatch(one -> one.id().equals(id) && one.slackOnly() && one.amount() != null);
          case "advice" -> id.equals("none") && answer.adjustments().isEmpty();
          case "unexplained" ->
              answer.unexplained().stream().map(SignNote::id).anyMatch(id::equals);
          default -> throw new IllegalArgumentException("No case can expect \"" + what + "\".");
        };
    if (so) {
      return Optional.empty();
    }
    return Optional.of(
        switch (what) {
          case "first cause", "in play", "not in play" ->
              "causes: "
                  + answer.causes().stream().map(c -> c.id() + " " + c.probability()).toList();
          case "holds", "holds not", "not judged" ->
              "findings: "
                  + answer.findings().stream()
                      .map(f -> f.id() + (f.holds() ? " holds" : " holds not"))
                      .toList();
          case "caution", "stops tightening", "no caution" -> "cautions: " + cautions;
          case "unexplained" ->
              "unexplained: " + answer.unexplained().stream().map(SignNote::id).toList();
          default ->
              "advised: "
                  + advised
                  + ", held back: "
                  + answer.heldBack().stream().map(h -> h.id() + " (" + h.because() + ")").toList();
        });
  }
}
