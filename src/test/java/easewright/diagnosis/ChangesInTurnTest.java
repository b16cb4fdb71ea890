package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.rulebook.Catalog.AdjustmentEntry;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What is changed first, what would do instead, and what waits for another toile: one change a
 * toile, and what can be undone before what cannot (common practice).
 */
class ChangesInTurnTest {

  private static Stream<Answer> answersOfTheBook() {
    return Answering.BOOK.source().pages().values().stream()
        .flatMap(page -> page.cases().stream())
        .filter(one -> !one.given().isEmpty())
        .map(one -> (JsonNode) one.given())
        .map(Answering::answer);
  }

  private static Set<String> causes(AdjustmentNote note) {
    return note.cures().stream().map(Answer.CureNote::cause).collect(Collectors.toSet());
  }

  /** Obeyed one after the other, two cures of one cause would do it twice: common practice. */
  @Test
  void what_cures_another_cause_comes_later_and_what_cures_the_same_comes_instead() {
    answersOfTheBook()
        .filter(answer -> !answer.adjustments().isEmpty())
        .forEach(
            answer -> {
              AdjustmentNote first = answer.adjustments().get(0);
              assertEquals("first", first.use());
              for (AdjustmentNote note : answer.instead()) {
                assertTrue(causes(note).stream().anyMatch(causes(first)::contains), note.id());
              }
              assertEquals(
                  answer.adjustments().size() - 1, answer.instead().size() + answer.later().size());
            });
  }

  @Test
  void a_shorter_elastic_is_instead_of_a_shorter_band_and_the_cups_wait() {
    Answer answer =
        Answering.answer(
            Answering.given(
                """
                signs:
                  - {sign: band-rides-up-at-the-back, degree: strong}
                  - {sign: band-pulls-off-the-body, amount: 6 cm}
                  - {sign: neckline-gapes, amount: 12 mm}
                  - {sign: neckline-gape-pinches-out-smooth}
                """));
    assertEquals("take-in-the-band", answer.adjustments().get(0).id());
    assertTrue(ids(answer.instead()).contains("shorten-the-band-elastic"));
    assertTrue(ids(answer.later()).contains("wedge-out-of-the-neckline"));
  }

  @Test
  void nothing_is_listed_that_costs_more_than_it_promises() {
    answersOfTheBook()
        .flatMap(answer -> answer.adjustments().stream())
        .forEach(note -> assertTrue(note.worth() > 0, note.id() + " " + note.worth()));
  }

  @Test
  void what_is_hard_to_undo_is_surer_of_its_cause() {
    List<String> undo = List.of("sure-undo-simple", "sure-undo-unpick", "sure-undo-recut");
    for (int i = 1; i < undo.size(); i++) {
      assertTrue(parameter(undo.get(i)) > parameter(undo.get(i - 1)), undo.get(i));
    }
    answersOfTheBook()
        .flatMap(answer -> answer.adjustments().stream())
        .filter(note -> !note.cures().isEmpty())
        .forEach(
            note -> {
              double sure = note.cures().get(0).probability();
              double least = parameter("offered-from") * needed(note);
              assertTrue(sure >= least - 1e-4, note.id() + " " + sure);
            });
  }

  @Test
  void an_answer_is_clear_if_its_first_cause_is_sure_enough_for_the_change() {
    answersOfTheBook()
        .filter(answer -> !answer.adjustments().isEmpty() && !answer.causes().isEmpty())
        .forEach(
            answer -> {
              double sure = answer.causes().get(0).probability();
              double least = neededToBeClear(answer.adjustments().get(0));
              if (Math.abs(sure - least) > 1e-4) {
                assertEquals(sure > least, answer.clear(), answer.causes().get(0).id());
              }
            });
  }

  @Test
  void a_later_change_carries_no_invented_amount_for_a_sign_nobody_reported() {
    answersOfTheBook()
        .forEach(
            answer -> {
              Set<String> seen =
                  answer.understood().signs().stream()
                      .filter(Answer.SignNote::present)
                      .map(Answer.SignNote::id)
                      .collect(Collectors.toSet());
              for (AdjustmentNote note : answer.later()) {
                if (note.amount() != null && note.amount().estimated()) {
                  assertFalse(seen.isEmpty(), note.id());
                }
              }
            });
  }

  private static double needed(AdjustmentNote note) {
    AdjustmentEntry entry = Answering.BOOK.catalog().adjustments().get(note.id());
    return Math.max(
        parameter("sure-undo-" + entry.undo()),
        parameter("sure-effort-" + entry.effort().replace(' ', '-')));
  }

  /** What a clear answer needs: more where no amount can be told before something was measured. */
  private static double neededToBeClear(AdjustmentNote note) {
    boolean unmeasured = note.amount() == null && note.measureFirst() != null;
    return Math.max(needed(note), unmeasured ? parameter("sure-of-a-guess") : 0);
  }

  private static double parameter(String id) {
    return Answering.BOOK.source().parameter(id);
  }

  private static List<String> ids(List<AdjustmentNote> notes) {
    return notes.stream().map(AdjustmentNote::id).toList();
  }
}
