package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.diagnosis.Answer.QuestionNote;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is asked, and what is not: a fitting teacher asks little once all is clear. */
class QuestionsAskedTest {

  private static List<String> asked(String fitting) {
    return Answering.answer(Answering.given(fitting)).questions().stream()
        .map(QuestionNote::sign)
        .toList();
  }

  /** A tenth of a bit is the project's own choice. */
  @Test
  void where_a_cause_is_clear_nothing_is_asked_that_tells_next_to_nothing() {
    double least = Answering.BOOK.source().parameter("least-worth-asking");
    Answering.BOOK.source().pages().values().stream()
        .flatMap(page -> page.cases().stream())
        .filter(one -> !one.given().isEmpty())
        .map(one -> Answering.answer(one.given()))
        .filter(Answer::clear)
        .flatMap(answer -> answer.questions().stream())
        .forEach(question -> assertTrue(question.worthBits() >= least - 1e-4, question.sign()));
  }

  /** A seam allowance that was sent as numbers is not asked for: common practice. */
  @Test
  void what_a_number_answers_is_not_asked() {
    String unasked =
        """
        pattern: {sheet: quillmere-top}
        sizeCut: 75C
        making: {seamAllowanceSewn: 9 mm}
        cloth: {main: {around: {marked: 10 cm, stretched: 16 cm}}}
        signs: [{sign: tight-everywhere}]
        """;
    List<String> asked = asked(unasked);
    assertFalse(asked.contains("finished-seams-measure-wider-than-planned"), asked.toString());
    assertFalse(asked.contains("cloth-stops-hard-when-pulled-around"), asked.toString());
  }

  /**
   * "Slacken the straps: if it drops, length; if it still climbs and pulls off the body, band"
   * (common practice).
   */
  @Test
  void the_trades_own_test_between_the_two_likeliest_causes_comes_first() {
    Answering.BOOK.source().pages().values().stream()
        .flatMap(page -> page.cases().stream())
        .filter(one -> !one.given().isEmpty())
        .map(one -> Answering.answer(one.given()))
        .filter(answer -> answer.causes().size() > 1 && answer.questions().size() > 1)
        .forEach(
            answer -> {
              List<String> two =
                  answer.causes().stream().limit(2).map(Answer.CauseNote::id).toList();
              List<QuestionNote> asked = answer.questions();
              for (QuestionNote question : asked.subList(1, asked.size())) {
                if (decides(question.sign(), two) && !decides(asked.get(0).sign(), two)) {
                  double within = Answering.BOOK.source().parameter("deciding-test-within");
                  assertTrue(
                      worth(question) * within <= worth(asked.get(0)) * 1.01, question.sign());
                }
              }
            });
    List<String> asked = asked("signs: [{sign: band-digs-in, degree: clear}]");
    assertTrue(
        Answering.BOOK.catalog().signs().get(asked.get(0)).decides() != null, asked.toString());
  }

  /**
   * Whoever is not sure to have read a post right asks first, before anything is changed (common
   * practice). Once the reply came, the cause is as clear as if it had been plain from the start.
   */
  @Test
  void a_sign_that_was_perhaps_meant_is_asked_about_before_a_cause_is_clear() {
    String surely =
        """
        pattern: {sheet: quillmere-top}
        signs:
        - {sign: band-rides-up-at-the-back, degree: strong}
        - {sign: back-drops-when-the-straps-are-slackened, seen: absent}
        - {sign: band-pulls-off-the-body%s}
        """;
    Answer clear = Answering.answer(Answering.given(surely.formatted("")));
    assertTrue(clear.clear());
    Answer doubtful = Answering.answer(Answering.given(surely.formatted(", sure: 0.6")));
    assertFalse(doubtful.clear());
    assertEquals(clear.causes().get(0).id(), doubtful.causes().get(0).id());
    assertTrue(
        doubtful.causes().get(0).probability() < clear.causes().get(0).probability(),
        "a doubtful report tells less");
    QuestionNote first = doubtful.questions().get(0);
    assertEquals("band-pulls-off-the-body", first.sign());
    assertEquals(Boolean.TRUE, first.confirms());
    assertEquals(clear.causes().get(0).probability(), first.ifYes().get(0).probability(), 0.02);
    assertTrue(doubtful.questions().stream().skip(1).allMatch(one -> one.confirms() == null));
  }

  /** A danger counts in full, however doubtful the reading. */
  @Test
  void a_danger_that_was_perhaps_meant_stops_all_the_same() {
    Answer answer =
        Answering.answer(Answering.given("signs: [{sign: breathless-or-dizzy, sure: 0.05}]"));
    assertTrue(answer.isDanger());
  }

  private static boolean decides(String sign, List<String> causes) {
    List<String> decides = Answering.BOOK.catalog().signs().get(sign).decides();
    return decides != null && decides.containsAll(causes);
  }

  private static double worth(QuestionNote question) {
    return question.worthBits() / Answering.KNOWLEDGE.parameter("ask-", question.effort());
  }

  /** Every pair of look-alikes of the trade's table has a test that decides between them. */
  @Test
  void each_line_of_the_look_alike_table_has_its_test() {
    for (List<String> pair :
        List.of(
            List.of("band-too-long", "straps-too-short"),
            List.of("band-too-long", "cup-too-small"),
            List.of("band-too-short", "elastic-too-strong"),
            List.of("band-too-short", "cup-too-small"),
            List.of("band-too-narrow-for-the-load", "band-too-short"),
            List.of("cup-too-small", "neckline-edge-too-long"),
            List.of("straps-too-long", "neckline-edge-too-long"),
            List.of("front-armhole-too-long", "straps-set-too-wide"),
            List.of("cup-too-small", "too-little-stretch-around"),
            List.of("cup-too-large", "band-too-long"),
            List.of("straps-set-too-wide", "sloping-shoulders"),
            List.of("straps-too-narrow", "straps-too-short"),
            List.of("back-too-long", "band-too-long"),
            List.of("cup-too-small", "armhole-too-high"),
            List.of("support-layer-missing", "support-class-below-the-need"),
            List.of("poor-recovery", "elastic-too-weak"),
            List.of("stitch-does-not-stretch", "wrong-or-worn-needle"),
            List.of("uneven-sides", "sides-sewn-unequal"))) {
      assertTrue(
          Answering.BOOK.catalog().signs().keySet().stream().anyMatch(sign -> decides(sign, pair)),
          pair.toString());
    }
  }
}
