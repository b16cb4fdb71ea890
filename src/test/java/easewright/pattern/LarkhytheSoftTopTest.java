package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.cloth.Estimate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class LarkhytheSoftTopTest {

  private final PatternSheet sheet = new PatternSheets().find("larkhythe-soft-top").orElseThrow();

  // While nursing nothing should press (common practice): less than the 8 to 12 % of a
  // close-fitting top, yet smaller than every body it is for, or it would not stay in place.
  @Test
  void every_size_is_lighter_than_any_close_top() {
    for (PatternSize size : sheet.sizes()) {
      double underbust = size.underbustMm().orElseThrow().middleMm();
      double bust = underbust + size.differenceMm().orElseThrow();
      double bandEase = 1 - size.finishedMm().get("underband") / underbust;
      double bustEase = 1 - size.finishedMm().get("bust") / bust;
      assertTrue(bandEase > 0.04 && bandEase < 0.08, size.name() + " band " + bandEase);
      assertTrue(bustEase > 0.02 && bustEase < 0.08, size.name() + " bust " + bustEase);
      assertTrue(
          size.finishedMm().get("underband") < size.underbustMm().orElseThrow().fromMm(),
          size.name());
    }
  }

  // Reduction 1 − 1/(1 + u·s): the cloths required, used as stated, must reach the drafted ease.
  @Test
  void every_layer_asked_for_reaches_the_ease_of_the_draft() {
    sheet
        .cloth()
        .forEach(
            (layer, need) ->
                assertEquals(
                    0.06,
                    need.use().reduction(new Estimate(need.stretchAround(), 0)).value(),
                    0.01,
                    layer + " is drafted for another ease"));
  }

  // Bust-point width = 61.3 + 0.136·bust mm, residual SD 13.7 (computed from the US Army
  // anthropometric survey of 1988, Gordon et al., NATICK/TR-89/044).
  @Test
  void the_apexes_lie_where_most_bodies_have_theirs() {
    for (PatternSize size : sheet.sizes()) {
      double bust = size.underbustMm().orElseThrow().middleMm() + size.differenceMm().orElseThrow();
      double worn = size.finishedMm().get("bustPointWidth") * bust / size.finishedMm().get("bust");
      assertEquals(61.3 + 0.136 * bust, worn, 13.7, size.name());
    }
  }

  // An edge is as long as its parts (geometry), under every option.
  @Test
  void opening_neckline_and_armhole_are_as_long_as_the_pieces_they_run_over() {
    for (String back : List.of("scooped", "high")) {
      for (PatternSize size : sheet.sizes()) {
        Map<String, Double> mm = sheet.finishedMm(size, Map.of("back", back));
        assertEquals(
            mm.get("upperOpening") + mm.get("lowerOpening") + mm.get("underbandHeight"),
            mm.get("openingLength"),
            1e-6);
        assertEquals(
            2 * mm.get("frontNeckline") + mm.get("backNeckline"), mm.get("necklineEdge"), 1e-6);
        assertEquals(mm.get("frontArmhole") + mm.get("backArmhole"), mm.get("armholeEdge"), 1e-6);
      }
    }
  }

  // Counted by hand on the drawing: it opens at the centre front, so only the sides are sewn.
  @Test
  void it_opens_at_centre_front_and_is_joined_at_the_sides_alone() {
    for (String fastening : List.of("snaps", "hooks")) {
      Map<String, String> chosen = Map.of("fastening", fastening);
      Cut cut = sheet.cut(chosen);
      assertEquals(2, cut.seamsAcross("bust"));
      assertEquals(2, cut.seamsAcross("underband"));
      assertFalse(cut.piecesWith("centre-front-opening").isEmpty());
      assertEquals(
          1, sheet.trims(chosen).stream().filter(t -> t.kind().equals("fastener")).count());
    }
  }

  // A change of girth at the opening affects one girth only: two edges, half at each.
  @Test
  void a_change_at_the_opening_is_shared_by_its_two_sides() {
    List<Cut.Share> shares = sheet.cut(Map.of()).share(10, "centre-front-opening");
    assertEquals(5, shares.get(0).eachMm(), 1e-12);
    assertEquals(10, shares.stream().mapToDouble(Cut.Share::girthMm).sum(), 1e-12);
  }

  @Test
  void pockets_for_pads_need_the_lining_they_are_sewn_to() {
    assertThrows(
        IllegalArgumentException.class, () -> sheet.decided(Map.of("extras", "pad-pockets")));
    assertTrue(sheet.cut(Map.of("extras", "lining+pad-pockets")).piece("pad-pocket").isPresent());
  }
}
