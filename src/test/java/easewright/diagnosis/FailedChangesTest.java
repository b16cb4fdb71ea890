package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.diagnosis.Answer.AdjustmentNote;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What was tried and did not help is named, lowers its cause and is not offered again as it was.
 */
class FailedChangesTest {

  private static Answer slipping(String earlier) {
    return Answering.answer(
        Answering.given(
            """
            signs:
              - {sign: straps-slip-off, degree: clear}
              - {sign: gape-closes-when-the-strap-is-lifted}
              - {sign: straps-stretch-out-while-worn, seen: absent}
            """
                + earlier));
  }

  private static List<String> offered(Answer answer) {
    return answer.adjustments().stream().map(AdjustmentNote::id).toList();
  }

  private static double probability(Answer answer, String cause) {
    return answer.causes().stream()
        .filter(one -> one.id().equals(cause))
        .mapToDouble(Answer.CauseNote::probability)
        .findFirst()
        .orElse(0);
  }

  @Test
  void a_change_that_changed_nothing_is_named_and_not_offered_again_unchanged() {
    Answer before = slipping("");
    assertTrue(offered(before).contains("shorten-the-straps"), offered(before).toString());
    Answer answer =
        slipping("earlier: [{adjustment: shorten-the-straps, amount: 1 cm, outcome: same}]\n");
    assertEquals(
        "You've tried this already (shorten the straps, by 10 mm), and it changed nothing.",
        answer.tried().get(0).says());
    assertFalse(offered(answer).contains("shorten-the-straps"), offered(answer).toString());
    assertTrue(
        probability(answer, "straps-too-long") < probability(before, "straps-too-long"),
        answer.causes().toString());
  }

  /** Slack that can still be pinched asks for more, whatever the first centimetre did. */
  @Test
  void a_number_may_ask_for_more_of_a_change_that_changed_nothing() {
    Answer answer =
        Answering.answer(
            Answering.given(
                """
                signs:
                  - {sign: straps-slack-at-their-shortest, amount: 25 mm}
                  - {sign: straps-slip-off}
                earlier: [{adjustment: shorten-the-straps, amount: 5 mm, outcome: same}]
                """));
    assertTrue(offered(answer).contains("shorten-the-straps"), offered(answer).toString());
  }

  @Test
  void a_change_that_helped_may_go_on() {
    Answer answer =
        slipping("earlier: [{adjustment: shorten-the-straps, amount: 1 cm, outcome: better}]\n");
    assertTrue(offered(answer).contains("shorten-the-straps"), offered(answer).toString());
    assertEquals(List.of(), answer.tried());
  }

  /** Straps hang from the band: shortened, they lift one that is too long (common practice). */
  @Test
  void straps_shortened_for_the_worse_speak_for_the_band() {
    String climbing =
        """
        signs:
          - {sign: band-rides-up-at-the-back}
          - {sign: straps-slip-off}
        """;
    Answer before = Answering.answer(Answering.given(climbing));
    Answer answer =
        Answering.answer(
            Answering.given(
                climbing
                    + "earlier: [{adjustment: shorten-the-straps, amount: 1 cm, outcome: worse}]\n"));
    assertTrue(probability(answer, "band-too-long") > probability(before, "band-too-long"));
    assertTrue(
        probability(answer, "straps-too-long") < probability(before, "straps-too-long") + 1e-9);
    AdjustmentNote first = answer.adjustments().get(0);
    assertEquals("put-the-last-change-back", first.id());
    assertEquals("Put the last change back as it was: shorten the straps, by 10 mm.", first.does());
    assertFalse(first.tightens());
    assertFalse(offered(answer).contains("shorten-the-straps"));
  }

  @Test
  void putting_back_what_gave_room_tightens() {
    Answer answer =
        Answering.answer(
            Answering.given(
                """
                signs: [{sign: band-pulls-off-the-body, amount: 5 cm}]
                earlier: [{adjustment: let-out-the-band, amount: 1 cm, outcome: worse}]
                """));
    AdjustmentNote first = answer.adjustments().get(0);
    assertEquals("put-the-last-change-back", first.id());
    assertTrue(first.tightens());
    Answer nursing =
        Answering.answer(
            Answering.given(
                """
                circumstances: {nursing: true}
                signs: [{sign: band-pulls-off-the-body}]
                earlier: [{adjustment: let-out-the-band, amount: 1 cm, outcome: worse}]
                """));
    assertFalse(offered(nursing).contains("put-the-last-change-back"));
    assertNotNull(nursing.notNow());
  }
}
