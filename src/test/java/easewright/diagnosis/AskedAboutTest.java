package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.EveryShape;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.AskedNote;
import easewright.rulebook.Catalog.AdjustmentEntry;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the wearer asks whether to do is answered as the advice has it (common practice: the
 * question is answered before anything else is said of the fit).
 */
class AskedAboutTest {
  private static final String RIDES_UP = "signs: [{sign: band-rides-up-at-the-back}]";

  private static ObjectNode asking(ObjectNode request, String... changes) {
    ObjectNode asking = request.deepCopy();
    asking.set("asksAbout", Answering.given("a: [" + String.join(", ", changes) + "]").path("a"));
    return asking;
  }

  private static AskedNote only(ObjectNode request, String change) {
    List<AskedNote> notes = Answering.answer(asking(request, change)).asked();
    assertEquals(1, notes.size(), notes::toString);
    return notes.get(0);
  }

  /** In this fitting the band comes first, its elastic instead, the neckline later. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          take-in-the-band               | yes     | Should you take in the band? Yes, that is what I'd try first.
          shorten-the-band-elastic       | instead | It would treat the same cause, but I'd take in the band first.
          wedge-out-of-the-neckline      | later   | Should you wedge out of the neckline? Not before you take in the band;
          stay-the-neckline-with-elastic | not-now | I'd leave that for now. 13 mm is more than this change should take up at once
          raise-the-neckline             | not-now | I'd leave that for now; from what you report I'd rather take in the band.
          """)
  void the_answer_follows_the_advice(String change, String verdict, String says) {
    AskedNote note = only(EveryShape.request(), change);
    assertEquals(verdict, note.verdict(), note::says);
    assertTrue(note.says().contains(says), note::says);
    assertEquals(change, note.id());
  }

  /** Each sign alone, and what is offered first for it. */
  @Test
  void the_first_change_is_agreed_to_only_where_a_cause_is_clear() {
    Map<String, Integer> seen = new TreeMap<>();
    for (String sign : Answering.KNOWLEDGE.catalog().signs().keySet()) {
      ObjectNode request = Answering.given("signs: [{sign: " + sign + "}]");
      Answer answer = Answering.answer(request);
      if (!answer.adjustments().isEmpty()) {
        AdjustmentNote first = answer.adjustments().get(0);
        AskedNote note = only(request, first.id());
        boolean sure = answer.clear() || first.cures().isEmpty();
        assertEquals(sure ? "yes" : "perhaps", note.verdict(), sign + ": " + note.says());
        seen.merge(note.verdict(), 1, Integer::sum);
      }
    }
    assertEquals(Set.of("yes", "perhaps"), seen.keySet(), seen::toString);
  }

  @Test
  void what_was_tried_in_vain_is_not_agreed_to() {
    ObjectNode tried =
        Answering.given(
            "{signs: [{sign: straps-slip-off}], earlier: [{adjustment: shorten-the-straps, outcome: same}]}");
    AskedNote note = only(tried, "shorten-the-straps");
    assertEquals("not-now", note.verdict(), note::says);
  }

  @Test
  void where_nothing_is_wrong_or_little_is_told_it_says_so() {
    ObjectNode sound = Answering.given("signs: [{sign: flesh-bulges-over-the-band}]");
    assertEquals("no-fault", Answering.answer(sound).verdict());
    AskedNote leave = only(sound, "let-out-the-band");
    assertEquals("not-now", leave.verdict());
    assertTrue(leave.says().endsWith("nothing reported is a fault."), leave::says);
    ObjectNode measured = Answering.given("body: {bust: 94 cm, underbust: 77 cm}");
    AskedNote untold = only(measured, "take-in-the-band");
    assertEquals("untold", untold.verdict(), untold::says);
  }

  /** Why nothing may be tightened then, see the sources in rules/common/health. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "nursing: true",
        "pregnant: true",
        "implantOrExpander: true",
        "prosthesisOrPocket: true",
        "sleepingInIt: true",
        "growing: true",
        "hurtRibs: true",
        "lymphoedemaOrNodesRemoved: true",
        "radiotherapy: true"
      })
  void no_tightening_is_agreed_to_or_named_while_a_caution_stops_it(String circumstance) {
    ObjectNode request =
        Answering.given("{" + RIDES_UP + ", circumstances: {" + circumstance + "}}");
    for (AdjustmentEntry entry : Answering.KNOWLEDGE.catalog().adjustments().values()) {
      if (entry.tightens()) {
        AskedNote note = only(request, entry.id());
        assertEquals("not-tighter", note.verdict(), note::says);
        assertFalse(note.says().contains(entry.name()), note::says);
      }
    }
    AskedNote looser = only(request, "let-out-the-band");
    assertEquals("let-out-the-band", looser.id());
  }

  @Test
  void slack_that_was_measured_may_go_and_no_more() {
    ObjectNode slack =
        Answering.given(
            "{body: {bust: 94 cm, underbust: 77 cm}, garment: {underband: 84 cm},"
                + " signs: [{sign: band-rides-up-at-the-back}, {sign: band-pulls-off-the-body, amount: 7 cm}],"
                + " circumstances: {nursing: true}}");
    Answer answer = Answering.answer(slack);
    AskedNote note = only(slack, answer.adjustments().get(0).id());
    assertTrue(answer.adjustments().get(0).slackOnly(), answer.adjustments()::toString);
    assertEquals("slack-only", note.verdict(), note::says);
  }

  @Test
  void words_that_nobody_has_judged_stop_it_too() {
    Answer answer =
        Answering.DIAGNOSIS.answer(
            Answering.read(asking(EveryShape.request(), "take-in-the-band")),
            new WordsLeft(true, false),
            false);
    assertEquals(
        List.of(
            new AskedNote(
                null,
                null,
                "not-tighter",
                "You asked whether to make something tighter or smaller: not before somebody has"
                    + " read what only a person can judge.")),
        answer.asked());
  }

  @Test
  void two_that_may_not_be_named_are_answered_once() {
    ObjectNode request = Answering.given("{" + RIDES_UP + ", circumstances: {nursing: true}}");
    Answer answer =
        Answering.answer(asking(request, "take-in-the-band", "shorten-the-band-elastic"));
    assertEquals(1, answer.asked().size(), answer.asked()::toString);
  }

  @Test
  void beside_a_danger_nothing_is_said_of_the_fit() {
    ObjectNode danger = Answering.given("signs: [{sign: breathless-or-dizzy}]");
    Set<String> all = Answering.KNOWLEDGE.catalog().adjustments().keySet();
    Answer answer = Answering.answer(asking(danger, all.stream().limit(10).toArray(String[]::new)));
    assertTrue(answer.isDanger());
    assertEquals(List.of(), answer.asked());
  }
}
