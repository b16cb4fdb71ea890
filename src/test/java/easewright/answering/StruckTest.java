package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import easewright.pattern.PatternSheets;
import easewright.request.FaultyRequest;
import easewright.rulebook.RuleBook;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a person strikes in the reading of a text does not count; a danger does all the same. */
class StruckTest {
  private static final Edition EDITION = Edition.of(RuleBook.compiledIn(), new PatternSheets());
  private static final String TEXT =
      "Soft bra. The band rides up at the back. I took in the band by 2 cm. The straps slip off.";

  private static ObjectNode request(String text) {
    return JsonNodeFactory.instance.objectNode().put("text", text);
  }

  /** A request that strikes every span at which this was read. */
  private static ObjectNode striking(String id, String named, Answer first, String text) {
    ObjectNode request = request(text);
    for (JsonNode span : first.read().path("spans")) {
      if (first.soFar().at(span.path("pointer").asText()).path(named).asText().equals(id)) {
        ObjectNode struck = request.withArray("struck").addObject().put("id", id);
        struck.set("from", span.path("from"));
        struck.set("to", span.path("to"));
      }
    }
    assertTrue(request.has("struck"), id + " was not read");
    return request;
  }

  private static List<String> read(Answer answer, String list, String named) {
    return answer.soFar().path(list).findValuesAsText(named);
  }

  @Test
  void a_sign_and_a_change_that_are_struck_do_not_count_and_are_not_kept() {
    Answer first = EDITION.answer(request(TEXT));

    Answer sign = EDITION.answer(striking("band-rides-up-at-the-back", "sign", first, TEXT));
    assertFalse(read(sign, "signs", "sign").contains("band-rides-up-at-the-back"));
    assertTrue(read(sign, "signs", "sign").contains("straps-slip-off"));
    assertFalse(sign.soFar().has("struck"));
    assertEquals(read(sign, "signs", "sign"), read(EDITION.answer(sign.soFar()), "signs", "sign"));

    Answer change = EDITION.answer(striking("take-in-the-band", "adjustment", first, TEXT));
    assertFalse(read(change, "earlier", "adjustment").contains("take-in-the-band"));
  }

  @Test
  void the_same_read_at_another_place_counts() {
    ObjectNode elsewhere = request(TEXT);
    elsewhere
        .withArray("struck")
        .addObject()
        .put("id", "straps-slip-off")
        .put("from", 0)
        .put("to", 4);
    assertTrue(read(EDITION.answer(elsewhere), "signs", "sign").contains("straps-slip-off"));
  }

  @Test
  void a_danger_stays_whoever_strikes_it() {
    String text = "My fingers go numb when I wear this bra. The straps slip off.";
    ObjectNode request = request(text);
    request
        .withArray("struck")
        .addObject()
        .put("id", "numb-or-tingling-arm-or-hand")
        .put("from", 0)
        .put("to", text.length());
    assertTrue(EDITION.answer(request).isDanger());
  }

  @Test
  void a_place_that_is_none_is_named() {
    ObjectNode request = request(TEXT);
    request
        .withArray("struck")
        .addObject()
        .put("id", "straps-slip-off")
        .put("from", 9)
        .put("to", 4);
    request.withArray("struck").addObject().put("id", "straps-slip-off");
    FaultyRequest refused = assertThrows(FaultyRequest.class, () -> EDITION.answer(request));
    assertEquals(
        List.of("/struck/0/to", "/struck/1/from", "/struck/1/to"),
        refused.faults().stream().map(one -> one.pointer()).toList());
  }
}
