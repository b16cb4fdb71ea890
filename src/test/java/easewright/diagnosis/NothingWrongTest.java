package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What is harmless is called so: flesh bulges over any band, and a garment that is comfortable and
 * holds is not changed (common practice).
 */
class NothingWrongTest {
  private static final String COMFORTABLE_BULGE =
      """
      pattern: {sheet: quillmere-top}
      sizeCut: 75C
      measuredBy: tape-trained
      body: {underbust: 75 cm, bust: 92 cm}
      garment: {underband: 67.5 cm}
      signs:
        - {sign: flesh-bulges-over-the-band, degree: slight}
        - {sign: band-digs-in, seen: absent}
        - {sign: breathing-feels-hard, seen: absent}
        - {sign: band-marks-last, seen: absent}
      """;

  private static void assertNothingWrong(ObjectNode given) {
    Answer answer = Answering.answer(given);
    String came = answer.verdict() + " " + answer.causes().stream().map(c -> c.id()).toList();
    assertEquals("no-fault", answer.verdict(), came + answer.nothingWrong());
    assertEquals(List.of(), answer.adjustments());
    assertEquals(List.of(), answer.heldBack());
    assertEquals(List.of(), answer.questions());
    assertEquals(List.of(), answer.unexplained());
    assertTrue(answer.noFault().startsWith("Nothing reported"), answer.noFault());
  }

  @Test
  void a_comfortable_bulge_over_a_band_that_measures_right_is_no_fault() {
    assertNothingWrong(Answering.given(COMFORTABLE_BULGE));
  }

  @Test
  void a_soft_bulge_at_the_armhole_is_no_fault() {
    assertNothingWrong(
        Answering.given(
            """
            signs:
              - {sign: flesh-bulges-over-the-armhole-edge, degree: slight}
              - {sign: armhole-cuts-or-chafes, seen: absent}
              - {sign: breast-spills-at-the-side, seen: absent}
            """));
  }

  @Test
  void a_single_layer_that_holds_at_low_impact_is_no_fault() {
    assertNothingWrong(
        Answering.given(
            """
            circumstances: {impact: low}
            signs:
              - {sign: front-has-a-single-layer}
              - {sign: bounces-up-and-down, seen: absent}
            """));
  }

  @Test
  void a_slight_roll_on_bending_is_no_fault() {
    assertNothingWrong(
        Answering.given(
            """
            signs:
              - {sign: band-rolls-at-the-lower-edge, degree: slight}
              - {sign: band-digs-in, seen: absent}
              - {sign: band-rides-up-at-the-back, seen: absent}
            """));
  }

  @Test
  void nothing_but_denials_is_no_fault() {
    assertNothingWrong(
        Answering.given(
            "signs: [{sign: band-digs-in, seen: absent}, {sign: neckline-gapes, seen: absent}]"));
  }

  /** At high impact a bounce is what the garment is there to stop: common practice. */
  @Test
  void a_bounce_at_high_impact_is_not_called_harmless() {
    Answer answer =
        Answering.answer(
            Answering.given(
                "{circumstances: {impact: high}, signs: [{sign: bounces-up-and-down}]}"));
    assertNotEquals("no-fault", answer.verdict());
    assertNull(answer.noFault());
  }

  @Test
  void what_is_strong_or_hardly_ever_harmless_is_not_called_harmless() {
    for (String sign :
        List.of(
            "{sign: band-rolls-at-the-lower-edge, degree: strong}",
            "{sign: breast-slips-out-below}")) {
      Answer answer = Answering.answer(Answering.given("signs: [" + sign + "]"));
      assertNotEquals("no-fault", answer.verdict(), sign);
    }
  }

  /** Common practice: a little of what is often harmless is let be, unless it bothers somebody. */
  @Test
  void who_asks_what_to_do_about_a_slight_gape_is_not_told_that_it_is_nothing() {
    String slight = "fine: [band, straps, cups], signs: [{sign: neckline-gapes, degree: slight}]";
    assertNothingWrong(Answering.given("{" + slight + "}"));
    Answer asked = Answering.answer(Answering.given("{asksWhatToDo: true, " + slight + "}"));
    assertNotEquals("no-fault", asked.verdict());
    assertFalse(asked.questions().isEmpty());
  }

  @Test
  void who_asks_what_to_do_about_a_soft_bulge_is_told_that_it_is_nothing() {
    assertNothingWrong(Answering.given(COMFORTABLE_BULGE).put("asksWhatToDo", true));
  }

  /** What was measured, or is clear, is no trifle: common practice. */
  @Test
  void what_is_clear_or_was_measured_is_not_called_harmless() {
    for (String sign :
        List.of(
            "{sign: neckline-gapes, degree: clear}",
            "{sign: neckline-gapes, degree: slight, amount: 3 cm}",
            "{sign: centre-front-stands-off, amount: 3 cm}")) {
      Answer answer =
          Answering.answer(Answering.given("{fine: [band, straps], signs: [" + sign + "]}"));
      assertNotEquals("no-fault", answer.verdict(), sign);
    }
  }

  /** The more was measured, the less it is by chance; a finger's width may be: common practice. */
  @Test
  void nothing_wrong_is_the_less_likely_the_more_was_measured() {
    double before = 1;
    for (String amount : List.of("1 cm", "3 cm", "5 cm")) {
      double nothing =
          Answering.answer(
                  Answering.given(
                      "signs: [{sign: band-rides-up-at-the-back, degree: clear, amount: "
                          + amount
                          + "}]"))
              .nothingWrong();
      assertTrue(nothing < before, amount + " " + nothing);
      before = nothing;
    }
    assertTrue(before < 0.05, "" + before);
  }

  /** A number that speaks of a fault does so though no sign was seen. */
  @Test
  void a_finding_that_speaks_of_a_fault_is_one() {
    ObjectNode given = Answering.given(COMFORTABLE_BULGE);
    given.putObject("garment").put("underband", "60 cm");
    assertNotEquals("no-fault", Answering.answer(given).verdict());
  }
}
