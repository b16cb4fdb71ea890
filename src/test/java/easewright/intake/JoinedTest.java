package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.intake.Reading.NotUnderstood;
import easewright.intake.Reading.SignRead;
import easewright.number.AmountRead;
import easewright.number.TextSpan;
import easewright.reading.ReaderSettings;
import easewright.reading.Said;
import easewright.reading.SentenceSaid;
import easewright.reading.TrainedReader;
import easewright.reading.TrainedReading;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Two readings of one text. That either may raise a danger, and that doubt about one leaves the
 * judgement to a person, is common practice of safety.
 */
class JoinedTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Intake INTAKE = new Intake(BOOK);
  private static final Optional<TrainedReader> TINY =
      Optional.of(TrainedReader.in(Path.of("src/test/resources/easewright/reading/tiny")));
  private static final String SLIPS = "straps-slip-off";
  private static final String FAINTED = "fainted-or-blacked-out";
  private static final TextSpan WORDS = new TextSpan(3, 9);
  private static final TextSpan SENTENCE = new TextSpan(0, 20);

  private static final Said NOTHING = new Said(0.01, 0.01, 0.01);
  private static final Said REPORTED = new Said(0.97, 0.01, 0.01);
  private static final Said DENIED = new Said(0.01, 0.97, 0.01);
  private static final Said DOUBTFUL = new Said(0.05, 0.01, 0.9);

  private static final AmountRead AMOUNT = new AmountRead("3 mm", null, 1);

  private static SignRead byWords(String sign, boolean present) {
    return new SignRead(
        sign, present, null, "left", "slight", present ? AMOUNT : null, "a phrase", WORDS, 0.9);
  }

  private static TrainedReading model(String sign, Said said) {
    ReaderSettings.Weights weights = new ReaderSettings.Weights(-1, 0.6, 2, -1.5, 0.6, 0.3);
    return new TrainedReading(
        List.of(
            SentenceSaid.of(SENTENCE.from(), SENTENCE.to(), sign, said),
            SentenceSaid.of(21, 40, sign, NOTHING)),
        new ReaderSettings(
            List.of(sign),
            new ReaderSettings.Limits(100, 50, 10, 5),
            new ReaderSettings.Joining(weights, weights, 0.6, 0.3, 0.03, 0.25, 0, 0.12, Set.of())));
  }

  private static Joined joined(List<SignRead> words, String sign, Said said) {
    return Joined.of(words, model(sign, said), BOOK.catalog().signs(), any -> true);
  }

  private static SignRead only(Joined joined) {
    assertEquals(1, joined.signs().size(), joined.toString());
    return joined.signs().get(0);
  }

  @Test
  void what_both_read_keeps_the_words_own_reading_and_is_surer_than_either() {
    SignRead words = byWords(SLIPS, true);
    SignRead both = only(joined(List.of(words), SLIPS, REPORTED));
    assertEquals(
        new SignRead(
            SLIPS, true, null, "left", "slight", AMOUNT, "a phrase", WORDS, both.confidence()),
        both);
    assertTrue(both.confidence() > only(joined(List.of(), SLIPS, REPORTED)).confidence());
  }

  @Test
  void what_only_the_model_reads_is_added_with_its_sentence() {
    SignRead added = only(joined(List.of(), SLIPS, REPORTED));
    assertTrue(added.present());
    assertEquals(SENTENCE, added.span());
    SignRead denied = only(joined(List.of(), SLIPS, DENIED));
    assertTrue(!denied.present());
    assertEquals(SENTENCE, denied.span());
    assertEquals(List.of(), joined(List.of(), SLIPS, new Said(0.5, 0.2, 0.1)).signs());
  }

  @Test
  void what_only_the_words_read_loses_confidence_and_is_asked_about_when_little_is_left() {
    SignRead doubted = only(joined(List.of(byWords(SLIPS, true)), SLIPS, new Said(0.2, 0.1, 0.1)));
    assertTrue(doubted.confidence() < 0.9);
    Joined struck = joined(List.of(byWords(SLIPS, true)), SLIPS, NOTHING);
    assertEquals(List.of(), struck.signs());
    assertEquals(List.of(new NotUnderstood(WORDS, List.of(SLIPS))), struck.struck());
  }

  @Test
  void what_the_words_took_for_reported_and_the_model_for_denied_is_denied() {
    ReaderSettings.Weights sure = new ReaderSettings.Weights(0, 1, 1, -1, 0.6, 0.3);
    TrainedReading model = model(SLIPS, DENIED);
    TrainedReading trusted =
        new TrainedReading(
            model.sentences(),
            new ReaderSettings(
                List.of(SLIPS),
                model.settings().limits(),
                new ReaderSettings.Joining(sure, sure, 0.6, 0.3, 0.03, 0.25, 0, 0.12, Set.of())));
    SignRead one =
        only(
            Joined.of(List.of(byWords(SLIPS, true)), trusted, BOOK.catalog().signs(), any -> true));
    assertEquals(SENTENCE, one.span());
    assertTrue(!one.present());
  }

  /** "Tugged on the seam and the thread just snapped, the cloth didn't care". */
  @Test
  void where_the_model_is_torn_the_words_decide_and_without_them_it_is_asked() {
    Said torn = new Said(0.13, 0.94, 0);
    assertTrue(only(joined(List.of(byWords(SLIPS, true)), SLIPS, torn)).present());

    Joined alone = joined(List.of(), SLIPS, torn);
    assertEquals(List.of(), alone.signs());
    assertEquals(List.of(SLIPS), alone.struck().get(0).perhaps());
  }

  @Test
  void a_sign_the_model_does_not_know_stays_as_the_words_read_it() {
    List<SignRead> words = List.of(byWords("straps-dig-in", true));
    assertEquals(words, joined(words, SLIPS, NOTHING).signs());
  }

  @Test
  void a_sign_the_book_does_not_hold_is_left_out() {
    assertEquals(List.of(), joined(List.of(), "no-sign-of-the-book", REPORTED).signs());
  }

  @Test
  void either_raises_a_danger() {
    assertTrue(only(joined(List.of(), FAINTED, REPORTED)).present());
    SignRead denied = byWords(FAINTED, false);
    assertTrue(only(joined(List.of(denied), FAINTED, REPORTED)).present());
    assertEquals(
        byWords(FAINTED, true), only(joined(List.of(byWords(FAINTED, true)), FAINTED, DOUBTFUL)));
  }

  @Test
  void the_model_denies_no_danger() {
    assertEquals(List.of(), joined(List.of(), FAINTED, DENIED).signs());
    SignRead denied = byWords(FAINTED, false);
    assertEquals(denied, only(joined(List.of(denied), FAINTED, DENIED)));
  }

  @Test
  void a_danger_asked_about_or_feared_is_for_a_person_to_read() {
    Joined joined = joined(List.of(), FAINTED, DOUBTFUL);
    assertEquals(List.of(), joined.signs());
    assertEquals(SENTENCE, joined.readYourself().get(0).span());
    assertEquals(List.of(), joined(List.of(), FAINTED, NOTHING).readYourself());
  }

  @Test
  void a_danger_of_the_words_stands_or_is_for_a_person_to_read() {
    Random random = new Random(7);
    SignRead words = byWords(FAINTED, true);
    int lowered = 0;
    for (int i = 0; i < 500; i++) {
      double a = random.nextDouble() * random.nextDouble() / 5;
      double b = random.nextDouble() * (1 - a);
      double c = random.nextDouble() * (1 - a - b) / 5;
      Joined joined = joined(List.of(words), FAINTED, new Said(a, b, c));
      if ((float) a + (float) c < 0.03) { // the model gives floats
        lowered++;
        assertEquals(List.of(), joined.signs());
        assertEquals(WORDS, joined.readYourself().get(0).span());
      } else {
        assertEquals(words, only(joined));
        assertEquals(List.of(), joined.readYourself());
      }
    }
    assertTrue(lowered > 20 && lowered < 480, "lowered " + lowered);
  }

  @Test
  void nothing_is_lowered_in_a_reply_nor_beside_another_danger_nor_where_the_sign_is_unknown() {
    List<SignRead> words = List.of(byWords(FAINTED, true));
    Map<String, SignEntry> catalog = BOOK.catalog().signs();
    assertEquals(words, Joined.of(words, model(FAINTED, NOTHING), catalog, any -> false).signs());
    assertEquals(words, joined(words, "fever", NOTHING).signs());
    TrainedReading one = model(FAINTED, NOTHING);
    TrainedReading beside =
        new TrainedReading(
            List.of(one.sentences().get(0), SentenceSaid.of(0, 20, "fever", new Said(0.2, 0, 0.1))),
            new ReaderSettings(
                List.of(FAINTED, "fever"), one.settings().limits(), one.settings().joining()));
    assertEquals(words, Joined.of(words, beside, catalog, any -> true).signs());
  }

  @Test
  void a_post_is_read_by_both() {
    String text = "The band rides up at the back. Soft bra, and the delta.";
    Reading reading = INTAKE.read(text, null, TINY);
    assertEquals(
        List.of("delta."),
        reading.signs().stream()
            .filter(one -> one.id().equals(SLIPS))
            .map(one -> one.span().in(text).substring(text.substring(31).indexOf("delta")))
            .toList());
    assertEquals(
        List.of(),
        INTAKE.read(text).signs().stream().filter(one -> one.id().equals(SLIPS)).toList());
  }

  @Test
  void a_danger_only_the_model_reads_stops_the_fitting() {
    String text = "The band rides up at the back and the red.";
    assertTrue(
        INTAKE.read(text, null, TINY).signs().stream()
            .anyMatch(one -> one.id().equals(FAINTED) && one.present()));
    String doubtful = "The straps of my bra, and the blue.";
    assertEquals(1, INTAKE.read(doubtful, null, TINY).readYourself().size());
    assertEquals(0, INTAKE.read(doubtful).readYourself().size());
  }
}
