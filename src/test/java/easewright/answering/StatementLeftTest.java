package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import easewright.pattern.PatternSheets;
import easewright.request.FaultyRequest;
import easewright.request.IntakeAnswer;
import easewright.request.IntakeAnswer.NotUnderstoodNote;
import easewright.rulebook.RuleBook;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Nobody is told that nothing is wrong while something she states was not understood. */
class StatementLeftTest {
  private static final Edition EDITION = Edition.of(RuleBook.compiledIn(), new PatternSheets());

  private static ObjectNode sound() {
    ObjectNode request = JsonNodeFactory.instance.objectNode();
    for (String sign : List.of("neckline-gapes", "band-digs-in", "straps-slip-off")) {
      request.withArray("/signs").addObject().put("sign", sign).put("seen", "absent");
    }
    return request;
  }

  @Test
  void a_statement_that_was_not_understood_leaves_the_answer_open() {
    assertEquals("no-fault", EDITION.answer(sound()).verdict());
    Answer answer = EDITION.answer(sound().put("text", "It rides up."));
    assertFalse(answer.read().path("notUnderstood").isEmpty(), answer.read()::toString);
    assertNotEquals("no-fault", answer.verdict());
  }

  /** What was pinned and measured is never passed over, even where it names no piece. */
  @Test
  void a_pinned_amount_that_was_read_as_nothing_leaves_the_answer_open() {
    String fold = "My bra: I pinned 1 cm on each side and then it was quiet.";
    Answer answer = EDITION.answer(sound().put("text", fold));
    assertTrue(
        answer.read().path("notUnderstood").findValuesAsText("text").stream()
            .anyMatch(one -> one.contains("pinned 1 cm")),
        answer.read()::toString);
    assertNotEquals("no-fault", answer.verdict());
  }

  /** Whoever asks what to do is asked back; thanks and praise are not. */
  @Test
  void a_fit_question_that_tells_nothing_is_asked_back() {
    String asked = "My sports bra doesn't fit right. What should I change?";
    Answer answer = EDITION.answer(JsonNodeFactory.instance.objectNode().put("text", asked));
    assertEquals("no-signs", answer.verdict());
    assertTrue(answer.reply().toString().contains("Where is it"), answer.reply()::toString);
    assertThrows(
        FaultyRequest.class,
        () ->
            EDITION.answer(
                JsonNodeFactory.instance.objectNode().put("text", "Thanks for the bra group!")));
  }

  @ParameterizedTest
  @CsvSource({
    "The strap is odd. Is that right?, true",
    "Is the strap odd? All is well., false",
    "All is well; the strap is odd, true"
  })
  void a_question_that_was_not_understood_states_nothing(String text, boolean states) {
    int from = text.indexOf("strap");
    NotUnderstoodNote note =
        new NotUnderstoodNote("strap", from, from + "strap".length(), List.of(), null);
    IntakeAnswer read =
        new IntakeAnswer(
            "fit-question", null, List.of(), List.of(note), List.of(), List.of(), List.of());
    assertEquals(states, read.leavesAStatementOf(text));
  }
}
