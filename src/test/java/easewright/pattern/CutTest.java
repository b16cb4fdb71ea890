package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

// Counts below are made by hand on the drawing of a top with a two-part front.
class CutTest {

  private final PatternSheet sheet = new PatternSheets().find("quillmere-top").orElseThrow();

  @Test
  void a_pull_on_top_has_four_seams_across_the_bust_and_one_across_the_underband() {
    Cut cut = sheet.cut(Map.of());
    assertEquals(4, cut.seamsAcross("bust"));
    assertEquals(1, cut.seamsAcross("underband"));
  }

  @Test
  void hooks_at_centre_back_replace_the_seam_of_the_underband() {
    Cut cut = sheet.cut(Map.of("closure", "hooks"));
    assertEquals(4, cut.seamsAcross("bust"));
    assertEquals(0, cut.seamsAcross("underband"));
  }

  @Test
  void the_shaped_seam_is_on_the_front_and_side_pieces_of_every_layer() {
    List<String> ids =
        sheet.cut(Map.of()).piecesWith("shaped-seam").stream().map(Piece::id).toList();
    assertEquals(
        List.of(
            "front", "side-panel", "front-lining", "side-lining", "front-support", "side-support"),
        ids);
  }

  @Test
  void only_the_back_that_was_chosen_is_cut() {
    Cut cut = sheet.cut(Map.of("back", "drawn-in"));
    List<String> backs =
        cut.pieces().stream().filter(p -> p.role().equals("back")).map(Piece::id).toList();
    assertEquals(List.of("back-drawn-in"), backs);
  }

  @Test
  void options_that_cannot_stand_together_are_refused() {
    Map<String, String> chosen = Map.of("back", "drawn-in", "closure", "hooks");
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> sheet.cut(chosen))
            .getMessage()
            .contains("closure/hooks"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> sheet.cut(Map.of("back", "open")))
            .getMessage()
            .contains("no option 'open'"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> sheet.cut(Map.of("colour", "red")))
            .getMessage()
            .contains("no choice 'colour'"));
  }

  // Two side seams have four edges: 24 mm let out is 6 mm at each (common practice).
  @Test
  void twenty_four_millimetres_at_the_side_seams_are_six_at_every_edge() {
    Map<String, Double> each =
        sheet.cut(Map.of()).share(24, "side-seam").stream()
            .collect(Collectors.toMap(share -> share.piece().id(), Cut.Share::eachMm));
    assertEquals(
        Map.of("side-panel", 6.0, "back", 6.0, "side-lining", 6.0, "side-support", 6.0), each);
  }

  // A piece cut on the fold doubles whatever is changed at the fold (common practice).
  @Test
  void a_change_at_the_fold_of_the_front_is_marked_by_half() {
    Cut.Share share = sheet.cut(Map.of()).share(-10, "centre-front").get(0);
    assertEquals("front", share.piece().id());
    assertEquals(-5, share.eachMm(), 1e-12);
    assertEquals(-10, share.girthMm(), 1e-12);
  }

  @Test
  void a_line_no_piece_has_takes_no_share() {
    assertEquals(List.of(), sheet.cut(Map.of()).share(10, "waist-seam"));
  }

  @Property
  void shares_add_up_to_the_whole_change_whatever_is_chosen(
      @ForAll @DoubleRange(min = -150, max = 150) double changeMm,
      @ForAll("uprights") String lineOrEdge,
      @ForAll("choices") Map<String, String> chosen) {
    List<Cut.Share> shares = sheet.cut(chosen).share(changeMm, lineOrEdge);
    assertEquals(changeMm, shares.stream().mapToDouble(Cut.Share::girthMm).sum(), 1e-9);
    for (Cut.Share share : shares) {
      assertTrue(share.piece().carries(lineOrEdge));
      assertEquals(share.copy(), share.piece().layer() != Layer.MAIN);
    }
  }

  @Provide
  Arbitrary<String> uprights() {
    return Arbitraries.of("side-seam", "shaped-seam", "centre-front", "underband-centre-front");
  }

  @Provide
  Arbitrary<Map<String, String>> choices() {
    return Arbitraries.of("mid", "high")
        .flatMap(
            neckline ->
                Arbitraries.of("rounded/pull-on", "rounded/hooks", "drawn-in/pull-on")
                    .map(
                        pair -> {
                          Map<String, String> chosen = new HashMap<>();
                          chosen.put("neckline", neckline);
                          chosen.put("back", pair.substring(0, pair.indexOf('/')));
                          chosen.put("closure", pair.substring(pair.indexOf('/') + 1));
                          return chosen;
                        }));
  }
}
