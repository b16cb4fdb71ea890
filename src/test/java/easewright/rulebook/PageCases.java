package easewright.rulebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.api.FaultyRequest;
import easewright.api.FittingReader;
import easewright.api.KnownNames;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.CautionNote;
import easewright.diagnosis.Answer.FindingNote;
import easewright.diagnosis.Answer.SignNote;
import easewright.diagnosis.Diagnosis;
import easewright.pattern.PatternSheets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Puts the fenced cases of rule pages before a diagnosis, which is made anew with each of these.
 */
final class PageCases {
  static final RuleBook BOOK = RuleBook.compiledIn();
  private static final PatternSheets SHEETS = new PatternSheets();
  private static final FittingReader READER =
      new FittingReader(KnownNames.of(BOOK.catalog(), SHEETS));

  private final Diagnosis diagnosis = new Diagnosis(BOOK, SHEETS.shipped());

  /** Fails with what is not as the case says. */
  void run(RulePage.RuleCase one) {
    Answer answer;
    try {
      answer = diagnosis.answer(READER.read(one.given()));
    } catch (FaultyRequest e) {
      fail(e.faults().toString());
      return;
    }
    List<String> wrong = new ArrayList<>();
    int[] checks = {0};
    one.then()
        .fields()
        .forEachRemaining(
            entry ->
                ids(entry.getValue())
                    .forEach(
                        id -> {
                          checks[0]++;
                          Optional<String> said = check(answer, entry.getKey(), id);
                          said.ifPresent(wrong::add);
                        }));
    assertEquals("", String.join("\n", wrong));
    if (checks[0] == 0) {
      fail("The case checks nothing.");
    }
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

  private static Optional<String> check(Answer answer, String what, String id) {
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
          default -> false;
        };
    return so
        ? Optional.empty()
        : Optional.of(
            what
                + ": "
                + id
                + " is not so. Causes "
                + answer.causes().stream().map(c -> c.id() + " " + c.probability()).toList()
                + ", findings "
                + answer.findings().stream().map(f -> f.id() + " " + f.holds()).toList()
                + ", advised "
                + advised
                + ", held back "
                + answer.heldBack().stream().map(h -> h.id() + ": " + h.because()).toList()
                + ", cautions "
                + cautions);
  }
}
