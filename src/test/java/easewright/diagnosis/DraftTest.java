package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What a sheet says of the garment cut, reckoned by hand from the shipped sheets' own numbers. */
class DraftTest {

  private static ObjectNode cut(String sheet, String size) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.putObject("body").put("bust", "97 cm").put("underbust", "80 cm");
    json.putObject("pattern").put("sheet", sheet);
    return size == null ? json : json.put("sizeCut", size);
  }

  private static Draft draft(ObjectNode json) {
    return Draft.of(Answering.read(json), Answering.BOOK.source());
  }

  /** 80C is the fourth band and the third cup: base + 3 · perBand + 2 · perCup. */
  @Test
  void the_measurements_of_a_size_are_those_of_its_band_and_cup() {
    Draft draft = draft(cut("quillmere-top", "80C"));
    assertEquals(585 + 3 * 45, draft.underband().orElseThrow().value());
    assertEquals(718 + 3 * 46 + 2 * 18.4, draft.bust().orElseThrow().value(), 1e-9);
    assertEquals(800, draft.underbustMm().orElseThrow());
    assertEquals(170, draft.differenceMm().orElseThrow());
    assertEquals(154 + 3 * 6.4 + 2 * 2.5, draft.bustPointWidthMm().orElseThrow(), 1e-9);
    assertEquals(218 + 3 * 5.5 + 2 * 4.6, draft.shoulderToBustPointMm().orElseThrow(), 1e-9);
    assertEquals(318 + 3 * 7 + 2 * 6.5, draft.shoulderToUnderbustMm().orElseThrow(), 1e-9);
    assertEquals(9.525, draft.seamAllowanceMm().orElseThrow(), 1e-9); // 3/8 in
  }

  /** The sheet says that the band takes 10 % off the body and the bust 8 %. */
  @Test
  void band_and_bust_are_stretched_as_far_as_the_sheet_means_them_to_be() {
    Draft draft = draft(cut("quillmere-top", "80C"));
    assertEquals(800.0 / 720 - 1, draft.bandStrain().orElseThrow(), 1e-9);
    assertEquals(970 / 892.8 - 1, draft.bustStrain().orElseThrow(), 1e-9);
    assertEquals(1 / 0.9 - 1, draft.bandStrain().orElseThrow(), 0.002);
    assertEquals(1 / 0.92 - 1, draft.bustStrain().orElseThrow(), 0.002);
  }

  @Test
  void what_was_measured_on_the_toile_counts_before_what_was_drafted() {
    ObjectNode json = cut("quillmere-top", "80C");
    json.putObject("garment").put("underband", "70 cm").put("bust", "88 cm");
    assertEquals(700, draft(json).underband().orElseThrow().value());
    assertEquals(880, draft(json).bust().orElseThrow().value());
  }

  /** Two shaped seams and two side seams cross the bust; linings and supports repeat them. */
  @Test
  void only_seams_of_the_main_cloth_count_around_the_bust() {
    assertEquals(4, draft(cut("quillmere-top", null)).seamsAround().orElseThrow());
  }

  @Test
  void the_traits_are_those_of_the_pieces_and_trims_chosen() {
    assertEquals(
        Set.of(
            "medium-support",
            "shaped-front",
            "pull-on",
            "cased-elastic",
            "lined",
            "with-support-layer",
            "pieces-on-the-fold"),
        draft(cut("quillmere-top", null)).traits());
    ObjectNode hooks = cut("quillmere-top", null);
    hooks.putObject("choices").put("closure", "hooks").put("straps", "sliders");
    Set<String> traits = draft(hooks).traits();
    assertTrue(traits.contains("back-opening"), traits::toString);
    assertTrue(traits.contains("adjustable-straps"), traits::toString);
  }

  @Test
  void a_pattern_that_opens_in_front_or_holds_by_compression_is_said_to() {
    Set<String> soft = draft(cut("larkhythe-soft-top", null)).traits();
    assertTrue(soft.containsAll(Set.of("low-support", "front-opening", "lined")), soft::toString);
    ObjectNode plain = cut("ossenby-pull-on", null);
    plain.putObject("choices").put("hem", "on-show");
    assertEquals(
        Set.of(
            "medium-support", "compression", "pull-on", "with-support-layer", "pieces-on-the-fold"),
        draft(plain).traits());
  }

  @Test
  void without_a_sheet_nothing_is_said_of_the_garment() {
    ObjectNode json = cut("quillmere-top", null);
    json.remove("pattern");
    Draft draft = draft(json);
    assertEquals(Set.of(), draft.traits());
    assertTrue(draft.seamsAround().isEmpty() && draft.bandStrain().isEmpty());
    assertTrue(draft.cut().isEmpty() && draft.need("main").isEmpty());
  }
}
