package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import easewright.reading.TrainedReader;
import easewright.request.TextReader;
import org.junit.jupiter.api.Test;

/** A trial told in a post decides the amount (common practice: what was pinned and lay flat). */
class TrialInAPostTest {
  private static JsonNode draft(String text) {
    return draft(new TextReader(Answering.BOOK.source(), Answering.SHEETS), text);
  }

  private static JsonNode draft(TextReader reader, String text) {
    return reader
        .read(JsonNodeFactory.instance.objectNode().put("text", text))
        .orElseThrow()
        .fitting();
  }

  @Test
  void what_was_pinned_and_lovely_is_the_amount_to_take_off() {
    Answer answer =
        Answering.answer(
            draft(
                "I pinned the neckline 1 cm shorter each side and it is lovely,"
                    + " how much do I take off?"));
    assertTrue(
        answer.adjustments().stream()
            .anyMatch(
                one ->
                    one.id().equals("wedge-out-of-the-neckline")
                        && one.amount().text().equals("10 mm")),
        () -> answer.adjustments() + " " + answer.tried() + answer.causes() + answer.verdict());
  }

  /** The trained reader finds no gape in these words, and must not strike what the trial shows. */
  @Test
  void both_readers_together_keep_what_a_trial_shows() {
    TextReader both =
        new TextReader(Answering.BOOK.source(), Answering.SHEETS).with(TrainedReader.shipped());
    JsonNode draft =
        draft(
            both,
            "I pinned the neckline 1 cm shorter each side and it is lovely,"
                + " how much do I take off? Should I also make the band tighter?");
    assertEquals("neckline-gapes", draft.at("/signs/0/sign").asText());
    Answer answer = Answering.answer(draft);
    assertEquals("wedge-out-of-the-neckline", answer.adjustments().get(0).id());
    assertEquals("10 mm", answer.adjustments().get(0).amount().text());
  }

  @Test
  void a_change_asked_about_is_kept_and_no_evidence() {
    JsonNode asked = draft("The bra band rides up at the back. Should I make the band tighter?");
    JsonNode plain = draft("The bra band rides up at the back.");
    assertEquals("take-in-the-band", asked.path("asksAbout").path(0).asText());
    assertEquals(Answering.answer(plain).causes(), Answering.answer(asked).causes());
    assertEquals(asked.path("asksAbout"), Answering.goOn(asked).soFar().path("asksAbout"));
  }
}
