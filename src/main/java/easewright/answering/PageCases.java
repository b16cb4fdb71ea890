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
import easewright.request.KnownNames;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RulePage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Runs the fenced cases of rule pages against a diagnosis. */
public final class PageCases {
  private final FittingReader reader;
  private final Diagnosis diagnosis;

  /** Uses the diagnosis of this book. */
  public PageCases(RuleBook book, PatternSheets sheets) {
    this.reader = new FittingReader(KnownNames.of(book.source(), sheets));
    this.diagnosis = new Diagnosis(book, sheets.shipped());
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
    Answer answer;
    try {
      answer = diagnosis.answer(reader.read(one.given()));
    } catch (FaultyRequest refused) {
      return refused.faults().stream()
          .map(fault -> "given" + fault.pointer() + ": " + fault.problem() + " " + fault.remedy())
          .toList();
    }
    List<String> wrong = new ArrayList<>();
    int checks = 0;
    for (Map.Entry<String, JsonNode> expected : one.then().properties()) {
      for (String id : ids(expected.getValue())) {
        checks++;
        came(answer, expected.getKey(), id)
            .ifPresent(
                came -> wrong.add("expected " + expected.getKey() + ": " + id + "; " + came));
      }
    }
    return checks == 0 ? List.of("The case expects nothing.") : wrong;
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
          case "caution", "no caution" -> "cautions: " + cautions;
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
