package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.size.Region;
import java.util.List;
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

  /** The sheet says that the band takes 10 % off the body. */
  @Test
  void the_band_is_stretched_as_far_as_the_sheet_means_it_to_be() {
    Draft draft = draft(cut("quillmere-top", "80C"));
    assertEquals(800.0 / 720 - 1, draft.bandStrain().orElseThrow(), 1e-9);
    assertEquals(1 / 0.9 - 1, draft.bandStrain().orElseThrow(), 0.002);
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

  private static ObjectNode labelled(String size, String system, int bust, int underbust) {
    ObjectNode json = cut("quillmere-top", size);
    json.remove("pattern");
    json.putObject("body").put("bust", bust + " cm").put("underbust", underbust + " cm");
    return system == null ? json : json.put("sizeSystem", system);
  }

  private static LabelBody label(String size, String system, int bust, int underbust) {
    return draft(labelled(size, system, bust, underbust)).label().orElseThrow();
  }

  /**
   * EN 13402-3: an 85 B is for an underbust of 82.5 to 87.5 cm and a difference of 14 to 16 cm. A
   * French 85 is a European 70 (second-hand, an encyclopaedia).
   */
  @Test
  void a_label_of_a_named_system_tells_the_body_it_is_for_and_nothing_of_the_garment() {
    Draft european = draft(labelled("85B", "eu", 89, 74));
    assertEquals(850, european.underbustMm().orElseThrow());
    assertEquals(150, european.differenceMm().orElseThrow());
    assertTrue(european.underband().isEmpty() && european.bandStrain().isEmpty());
    assertEquals(700, draft(labelled("85B", "fr", 89, 74)).underbustMm().orElseThrow());
  }

  @Test
  void a_label_of_no_named_system_is_taken_for_what_fits_the_underbust() {
    LabelBody french = label("85B", null, 85, 70);
    assertEquals(LabelBody.How.FITS, french.how());
    assertEquals(List.of(Region.FR), french.regions());
    assertEquals(List.of(Region.EU), label("85B", null, 100, 85).regions());
  }

  /** 34 stands for 73 to 77 cm where the number hides four inches; B is two inches by either. */
  @Test
  void an_inch_label_may_be_of_both_sides_of_the_ocean() {
    LabelBody both = label("34B", null, 91, 75);
    assertEquals(List.of(Region.UK, Region.US), both.regions());
    assertEquals(750, both.underbustMm().orElseThrow());
    // From E on the sequences part: a British E is six inches, an American one is a DD, five.
    assertEquals(List.of(Region.UK), label("30E", null, 92, 76).regions());
    assertEquals(List.of(Region.US), label("30E", null, 89, 76).regions());
  }

  @Test
  void a_label_that_fits_nowhere_is_the_european_one_or_none() {
    LabelBody european = label("85B", null, 89, 74);
    assertEquals(LabelBody.How.USUAL, european.how());
    assertEquals(850, european.underbustMm().orElseThrow());
    // An inch number is counted in two ways, and 80 cm lies halfway between them.
    LabelBody open = label("34B", null, 94, 80);
    assertEquals(LabelBody.How.OPEN, open.how());
    assertTrue(open.underbustMm().isEmpty());
  }

  @Test
  void what_is_no_label_tells_nothing() {
    for (String free : List.of("M", "12", "2X", "75")) {
      assertTrue(draft(labelled(free, null, 90, 75)).label().isEmpty(), free);
    }
    assertTrue(draft(cut("quillmere-top", "80C")).label().isEmpty());
  }

  /** The cup first is the Japanese way of writing; JIS L 4006 has a C at 15 cm, EN one at 17. */
  @Test
  void the_cup_first_is_japanese() {
    assertEquals(List.of(Region.JP), label("C75", null, 90, 75).regions());
    assertEquals(List.of(Region.EU), label("75C", null, 90, 75).regions());
  }

  @Test
  void the_design_as_described_serves_where_no_sheet_is() {
    ObjectNode json = labelled("75C", "eu", 92, 75);
    ObjectNode design = json.putObject("design");
    design.put("back", "racer").put("closing", "front").put("front", "darts");
    design.put("supportLayer", "none").put("lining", "part");
    design.put("stretchAsked", "50 %").put("seamAllowance", "1 cm").put("seamsAround", 4);
    design.putObject("drafted").put("underband", "66 cm").put("bust", "82 cm");
    Draft draft = draft(json);
    assertEquals(
        Set.of("drawn-in-back", "front-opening", "shaped-front", "lined", "low-support"),
        draft.traits());
    assertEquals(10, draft.seamAllowanceMm().orElseThrow());
    assertEquals(4, draft.seamsAround().orElseThrow());
    assertEquals(750.0 / 660 - 1, draft.bandStrain().orElseThrow(), 1e-9);
    assertEquals(0.5, draft.need("main").orElseThrow().stretchAround(), 1e-9);
    assertTrue(draft.need("support").isEmpty());
  }
}
