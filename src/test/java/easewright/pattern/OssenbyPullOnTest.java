package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.cloth.Estimate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class OssenbyPullOnTest {

  private final PatternSheet sheet = new PatternSheets().find("ossenby-pull-on").orElseThrow();

  // Negative ease of 8 to 12 % (common practice for close-fitting stretch tops).
  @Test
  void every_size_is_eight_to_twelve_percent_smaller_than_the_body_it_is_named_for() {
    for (PatternSize size : sheet.sizes()) {
      double band =
          1 - size.finishedMm().get("underband") / size.underbustMm().orElseThrow().middleMm();
      double bust =
          1
              - size.finishedMm().get("bust")
                  / size.bodies().get(0).bustMm().orElseThrow().middleMm();
      assertTrue(band >= 0.08 && band <= 0.12, size.name() + " band " + band);
      assertTrue(bust >= 0.08 && bust <= 0.1201, size.name() + " bust " + bust);
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
                    0.11,
                    need.use().reduction(new Estimate(need.stretchAround(), 0)).value(),
                    0.01,
                    layer + " is drafted for another ease"));
  }

  // Bust-point width = 61.3 + 0.136·bust mm, residual SD 13.7 (computed from the US Army
  // anthropometric survey of 1988, Gordon et al., NATICK/TR-89/044).
  @Test
  void the_apexes_lie_where_most_bodies_have_theirs() {
    for (PatternSize size : sheet.sizes()) {
      double bust = size.bodies().get(0).bustMm().orElseThrow().middleMm();
      double worn = size.finishedMm().get("bustPointWidth") * bust / size.finishedMm().get("bust");
      assertEquals(61.3 + 0.136 * bust, worn, 13.7, size.name());
    }
  }

  // An edge is as long as its parts (geometry), under every option.
  @Test
  void the_armhole_is_as_long_as_the_pieces_it_runs_over() {
    for (String back : List.of("wide", "narrow")) {
      for (PatternSize size : sheet.sizes()) {
        Map<String, Double> finished = sheet.finishedMm(size, Map.of("back", back));
        assertEquals(
            finished.get("frontArmhole") + finished.get("backArmhole"),
            finished.get("armholeEdge"),
            1e-6,
            size.name());
      }
    }
  }

  // Two side seams, counted by hand on the drawing; the casing lies on top and does not add to the
  // girth.
  @Test
  void two_seams_cross_the_bust_and_the_same_two_the_underband() {
    assertEquals(2, sheet.cut(Map.of()).seamsAcross("bust"));
    assertEquals(2, sheet.cut(Map.of()).seamsAcross("underband"));
  }

  // Two parts have four combinations: none, each, both.
  @Test
  void where_any_may_be_picked_every_combination_is_an_option() {
    Set<String> options =
        sheet.choice("layers").orElseThrow().options().stream()
            .map(SheetChoice.Option::id)
            .collect(Collectors.toSet());
    assertEquals(Set.of("none", "mesh", "full-lining", "mesh+full-lining"), options);
  }

  @Test
  void both_layers_beneath_are_cut_when_both_are_picked() {
    Set<String> cut = new HashSet<>();
    sheet
        .cut(Map.of("layers", "mesh+full-lining", "back", "narrow"))
        .pieces()
        .forEach(piece -> cut.add(piece.id()));
    assertEquals(
        Set.of(
            "front",
            "back-narrow",
            "casing-strip",
            "pocket",
            "front-mesh",
            "front-lining",
            "back-lining-narrow"),
        cut);
  }

  @Test
  void the_key_pocket_may_be_left_out_and_the_front_may_not() {
    Cut cut = sheet.cut(Map.of());
    assertTrue(cut.piece("pocket").orElseThrow().leftOut().isPresent());
    assertTrue(cut.piece("front").orElseThrow().leftOut().isEmpty());
  }
}
