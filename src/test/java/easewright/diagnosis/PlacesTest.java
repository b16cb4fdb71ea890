package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.PlaceNote;
import easewright.diagnosis.Answer.SignNote;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where a change is made follows the garment (common practice), and so does what is explained. */
class PlacesTest {

  private static AdjustmentNote offered(Answer answer, String id) {
    return answer.adjustments().stream()
        .filter(one -> one.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new AssertionError(answer.adjustments().toString()));
  }

  @Test
  void a_size_cut_anew_has_no_place() {
    for (String id : Answering.BOOK.catalog().adjustments().keySet()) {
      if (id.startsWith("cut-the-") && !id.equals("cut-the-sides-separately")) {
        assertEquals(List.of(), Answering.BOOK.catalog().adjustments().get(id).at(), id);
      }
    }
  }

  @Test
  void straps_are_moved_at_both_ends() {
    Answer answer =
        Answering.answer(
            Answering.given(
                """
                pattern: {sheet: quillmere-top}
                sizeCut: 75C
                signs:
                  - {sign: strap-lies-at-the-edge-of-the-shoulder, amount: 15 mm}
                  - {sign: straps-slip-off}
                """));
    AdjustmentNote note = offered(answer, "move-the-straps-in");
    List<String> lines = note.places().stream().map(PlaceNote::line).toList();
    assertTrue(lines.contains("back strap point"), lines.toString());
    assertTrue(lines.contains("shoulder seam"), lines.toString());
    assertTrue(note.steps().get(1).contains("both ends"), note.steps().toString());
  }

  /** The back armhole of this sheet is finished with elastic; so is its neckline. */
  @Test
  void an_edge_elastic_is_set_where_the_pattern_has_one_and_the_sign_was_seen() {
    Answer answer =
        Answering.answer(
            Answering.given(
                """
                pattern: {sheet: quillmere-top}
                sizeCut: 75C
                signs:
                  - {sign: edge-elastic-puckers, place: armhole, degree: strong}
                  - {sign: edge-elastic-measures-shorter-than-planned, place: armhole, amount: 15 mm}
                """));
    AdjustmentNote note = offered(answer, "let-out-the-edge-elastic");
    assertEquals("front armhole", note.places().get(0).line());
    assertTrue(
        answer.adjustments().stream()
            .filter(one -> one.id().contains("edge-elastic"))
            .flatMap(one -> one.places().stream())
            .noneMatch(place -> place.line().equals("underband seam")),
        "no elastic is sewn to the underband seam of this sheet");
  }

  @Test
  void what_a_cause_in_play_explains_is_not_called_unexplained() {
    double ratio = Answering.BOOK.source().parameter("unexplained-ratio");
    Answering.BOOK.source().pages().values().stream()
        .flatMap(page -> page.cases().stream())
        .filter(one -> !one.given().isEmpty())
        .map(one -> Answering.answer(one.given()))
        .forEach(
            answer -> {
              for (SignNote sign : answer.unexplained()) {
                for (CauseNote cause : answer.causes()) {
                  boolean strongly =
                      cause.evidenceFor().stream()
                          .anyMatch(
                              report ->
                                  report.id().equals(sign.id())
                                      && report.decibans() > 10 * Math.log10(2 * ratio) + 1);
                  assertTrue(!strongly, sign.id() + " by " + cause.id());
                }
              }
            });
  }
}
