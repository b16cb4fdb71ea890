package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import easewright.pattern.PatternSheets;
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
