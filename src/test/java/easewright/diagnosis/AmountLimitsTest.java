package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.HeldBackNote;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Amounts too small to show and too large for one change are treated alike in every adjustment. The
 * limits themselves are common practice; the book gives the source of each.
 */
class AmountLimitsTest {

  /** A neckline that gapes and pinches out smooth, by this much. */
  private static ObjectNode gaping(String amount) {
    ObjectNode given = JsonNodeFactory.instance.objectNode();
    var signs = given.putArray("signs");
    signs.addObject().put("sign", "neckline-gapes").put("seen", "present").put("amount", amount);
    signs.addObject().put("sign", "neckline-gape-pinches-out-smooth").put("seen", "present");
    signs.addObject().put("sign", "gape-closes-when-the-strap-is-lifted").put("seen", "absent");
    return given;
  }

  /** A band that pulls off the body, on an underbust of 80 cm; finished, it measures so much. */
  private static ObjectNode loose(String underband) {
    ObjectNode given = JsonNodeFactory.instance.objectNode();
    given.putObject("body").put("underbust", "80 cm").put("bust", "97 cm");
    given.putObject("garment").put("underband", underband);
    var signs = given.putArray("signs");
    signs.addObject().put("sign", "band-pulls-off-the-body").put("seen", "present");
    signs.addObject().put("sign", "band-rides-up-at-the-back").put("seen", "present");
    return given;
  }

  private static List<String> offered(Answer answer) {
    return answer.adjustments().stream().map(AdjustmentNote::id).toList();
  }

  private static Map<String, String> heldBack(Answer answer) {
    return answer.heldBack().stream()
        .collect(Collectors.toMap(HeldBackNote::id, HeldBackNote::because));
  }

  @Test
  void what_a_tape_does_not_show_is_left_alone() {
    Answer answer = Answering.answer(gaping("2 mm"));
    assertFalse(offered(answer).contains("wedge-out-of-the-neckline"));
    assertEquals(
        "2 mm is less than a tape shows: leave it.",
        heldBack(answer).get("wedge-out-of-the-neckline"));
  }

  @Test
  void what_a_tape_just_shows_is_offered() {
    assertTrue(offered(Answering.answer(gaping("3 mm"))).contains("wedge-out-of-the-neckline"));
  }

  @Test
  void above_its_limit_a_change_gives_way_to_what_takes_over() {
    Answer answer = Answering.answer(gaping("31 mm"));
    assertTrue(offered(answer).contains("take-room-from-above"), offered(answer).toString());
    assertFalse(offered(answer).contains("wedge-out-of-the-neckline"));
    assertEquals(
        "31 mm is more than this change should take up at once (20 mm):"
            + " take room from above instead.",
        heldBack(answer).get("wedge-out-of-the-neckline"));
  }

  /** What was pinched and lay smooth may pass the limit of 20 mm by half. */
  @Test
  void what_was_held_by_hand_and_sat_right_may_pass_the_limit_by_half() {
    assertTrue(offered(Answering.answer(gaping("21 mm"))).contains("wedge-out-of-the-neckline"));
  }

  /** 79 cm less 80 ÷ 1.11 is 69 mm, and a step of a band size is 5 cm (EN 13402-3). */
  @Test
  void above_its_limit_a_change_without_a_takeover_is_held_back_and_the_other_named() {
    Answer answer = Answering.answer(loose("79 cm"));
    assertFalse(offered(answer).contains("take-in-the-band"));
    assertEquals(
        "69 mm is more than this change should take up at once (50 mm):"
            + " cut the sister size instead.",
        heldBack(answer).get("take-in-the-band"));
  }

  @Test
  void whatever_tightens_is_held_back_in_silence_beside_a_caution() {
    ObjectNode given = gaping("21 mm");
    given.putObject("circumstances").put("operatedRecently", true);
    Answer answer = Answering.answer(given);
    Answering.BOOK.catalog().adjustments().values().stream()
        .filter(one -> one.tightens())
        .forEach(
            one ->
                assertTrue(
                    !heldBack(answer).containsKey(one.id())
                        && heldBack(answer).values().stream()
                            .noneMatch(because -> because.contains(one.name())),
                    one.id()));
  }
}
