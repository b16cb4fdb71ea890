package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;

// Boxes are checked against what follows geometrically from the finished measurements.
class PaperTest {

  private final PatternSheets sheets = new PatternSheets();

  @Test
  void every_piece_of_every_shipped_sheet_has_its_box_in_every_size() {
    for (PatternSheet sheet : sheets.shipped()) {
      for (Piece piece : sheet.pieces()) {
        for (PatternSize size : sheet.sizes()) {
          assertTrue(piece.box(size.name()).isPresent(), sheet.id() + " " + piece.id());
        }
        assertTrue(piece.box("no such size").isEmpty());
      }
    }
  }

  @Test
  void no_straight_seam_is_longer_than_the_diagonal_of_its_paper() {
    for (PatternSheet sheet : sheets.shipped()) {
      for (Piece piece : sheet.pieces()) {
        piece.edges().stream()
            .filter(edge -> edge.id().endsWith("side-seam") || edge.id().equals("shoulder-seam"))
            .forEach(edge -> sheet.sizes().forEach(size -> assertHolds(sheet, piece, edge, size)));
      }
    }
  }

  private static void assertHolds(PatternSheet sheet, Piece piece, Edge edge, PatternSize size) {
    Piece.Box box = piece.box(size.name()).orElseThrow();
    double mm = size.finishedMm().get(edge.length().orElseThrow()) * edge.part();
    assertTrue(
        mm < Math.hypot(box.aroundMm(), box.alongMm()),
        () -> sheet.id() + " " + piece.id() + " " + edge.id() + " " + size.name());
  }

  // The pieces around the body at the bust: at least the finished girth, plus some paper for seam
  // allowances and for pieces that are widest elsewhere (a quarter is generous).
  @Test
  void the_papers_side_by_side_are_as_wide_as_the_girth_and_little_more() {
    Map<String, String[]> around =
        Map.of(
            "quillmere-top", new String[] {"front", "side-panel", "back"},
            "ossenby-pull-on", new String[] {"front", "back-wide"},
            "larkhythe-soft-top", new String[] {"lower-front", "back"});
    around.forEach(
        (id, pieces) -> {
          PatternSheet sheet = sheets.find(id).orElseThrow();
          for (PatternSize size : sheet.sizes()) {
            double paper = 0;
            for (String pieceId : pieces) {
              Piece piece = sheet.cut(Map.of()).piece(pieceId).orElseThrow();
              paper += piece.box(size.name()).orElseThrow().aroundMm() * piece.occurrences();
            }
            double girth = size.finishedMm().get("bust");
            assertTrue(paper > girth && paper < 1.25 * girth, id + size.name() + paper / girth);
          }
        });
  }

  @Test
  void a_grids_box_grows_by_its_steps() {
    Piece side = sheets.find("quillmere-top").orElseThrow().cut(Map.of()).piece("side-panel").get();
    Piece.Box first = side.box("65A").orElseThrow();
    Piece.Box other = side.box("75C").orElseThrow();
    assertEquals(2 * 8.3 + 2 * 8, other.aroundMm() - first.aroundMm(), 1e-9);
    assertEquals(2 * 3.5 + 2 * 6.5, other.alongMm() - first.alongMm(), 1e-9);
  }

  @Test
  void a_lining_is_as_large_as_the_piece_it_follows() {
    Cut cut = sheets.find("quillmere-top").orElseThrow().cut(Map.of());
    assertEquals(
        cut.piece("front").orElseThrow().boxes(), cut.piece("front-lining").orElseThrow().boxes());
  }
}
