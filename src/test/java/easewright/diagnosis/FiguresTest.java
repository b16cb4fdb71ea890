package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.rulebook.facts.Figure;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The numbers that rules may judge, reckoned by hand from what was measured and from the shipped
 * sheet "quillmere-top", whose size 80C is drafted 720 mm around the underband, 892.8 mm around the
 * bust, for 800 mm and a difference of 170 mm (see {@link DraftTest}).
 */
class FiguresTest {
  private static ObjectNode fitting() {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.putObject("body")
        .put("bust", "98 cm")
        .put("underbust", "81 cm")
        .put("bustPointWidth", "18 cm");
    json.putObject("garment").put("underband", "70 cm").put("bust", "88 cm");
    json.putObject("pattern").put("sheet", "quillmere-top");
    return json.put("sizeCut", "80C");
  }

  private static Map<String, Figure> figures(ObjectNode json) {
    return Answering.figures(Answering.read(json));
  }

  private static void assertFigure(double value, String unit, String id, ObjectNode json) {
    Figure figure = figures(json).get(id);
    assertEquals(value, figure.value(), 1e-9, id);
    assertEquals(unit, figure.unit(), id);
  }

  @Test
  void girths_are_compared_with_those_the_size_is_drafted_for() {
    assertFigure(170, "mm", "bust-difference", fitting());
    assertFigure(0, "mm", "cup-shortfall", fitting());
    assertFigure(10, "mm", "band-shortfall", fitting());
  }

  /** 810 mm, stretched as the sheet stretches 800 mm over 720 mm, ask for 729 mm (by hand). */
  @Test
  void the_length_of_a_band_is_compared_with_body_and_sheet() {
    assertFigure(700 - 810 * 720.0 / 800, "mm", "band-length-excess", fitting());
  }

  /**
   * The sheet asks 90 % recovery of its main cloth; growth is what stays of the length marked,
   * recovery what goes back of the stretch (both common practice).
   */
  @Test
  void cloth_is_compared_with_what_its_layer_is_asked_for() {
    ObjectNode json = fitting();
    json.putObject("cloth")
        .putObject("main")
        .putObject("around")
        .put("marked", "10 cm")
        .put("stretched", "17 cm")
        .put("relaxed", "10.35 cm");
    assertFigure(0.7, "fraction", "main-stretch-around", json);
    assertFigure(0.035, "fraction", "main-growth", json);
    assertFigure(0.95, "fraction", "main-recovery", json);
    assertFigure(0.95 - 0.9, "fraction", "recovery-margin", json);
  }

  @Test
  void the_two_likeliest_sizes_are_known_by_their_probability() {
    Map<String, Figure> figures = figures(fitting());
    double best = figures.get("best-size-probability").value();
    double next = figures.get("runner-up-size-probability").value();
    assertTrue(best > next && next > 0 && best + next <= 1, best + " " + next);
  }

  @Test
  void the_first_amount_of_a_sign_that_was_seen_counts() {
    ObjectNode json = fitting();
    var signs = json.putArray("signs");
    signs
        .addObject()
        .put("sign", "band-rides-up-at-the-back")
        .put("side", "left")
        .put("amount", "3 cm");
    signs
        .addObject()
        .put("sign", "band-rides-up-at-the-back")
        .put("side", "right")
        .put("amount", "5 cm");
    signs.addObject().put("sign", "neckline-gapes").put("seen", "present");
    assertFigure(30, "mm", "amount-of-band-rides-up-at-the-back", json);
    assertFalse(figures(json).containsKey("amount-of-neckline-gapes"));
  }

  @Test
  void rounds_before_are_counted() {
    assertFigure(0, "count", "number-of-earlier-rounds", fitting());
    ObjectNode json = fitting();
    var earlier = json.putArray("earlier");
    earlier.addObject().put("adjustment", "anchor-the-layers").put("outcome", "same");
    earlier.addObject().put("adjustment", "set-the-straps-shorter").put("outcome", "better");
    assertFigure(2, "count", "number-of-earlier-rounds", json);
  }

  @Test
  void without_a_difference_there_is_no_cup() {
    ObjectNode json = fitting();
    ((ObjectNode) json.get("body")).remove("underbust");
    Map<String, Figure> figures = figures(json);
    assertFalse(figures.containsKey("bust-difference") || figures.containsKey("cup-volume"));
  }
}
