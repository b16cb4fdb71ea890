package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TextRead;
import easewright.modelreader.ModelReading;
import easewright.modelreader.ModelReading.CircumstanceSaid;
import easewright.modelreader.ModelReading.LengthSaid;
import easewright.modelreader.ModelReading.SignSaid;
import easewright.number.TextSpan;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * What a language model read, added to what the words read. That any reader may raise a danger and
 * none may take one away is common practice of safety.
 */
class ModelSaidTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Intake INTAKE = new Intake(BOOK);
  private static final double TRUST = BOOK.parameter("language-model-trusted");
  private static final String SLIPS = "straps-slip-off";
  private static final String RIDES = "band-rides-up-at-the-back";
  private static final String FAINTED = "fainted-or-blacked-out";
  private static final String NUMB = "numb-or-tingling-arm-or-hand";
  private static final String POST = "My soft bra wanders about all day, and my lamp winked at me.";
  private static final TextSpan WANDERS = spanOf("My soft bra wanders about all day");
  private static final TextSpan LAMP = spanOf("my lamp winked at me");

  private static TextSpan spanOf(String quote) {
    return spanOf(quote, POST);
  }

  private static TextSpan spanOf(String quote, String post) {
    int at = post.indexOf(quote);
    return new TextSpan(at, at + quote.length());
  }

  private static SignSaid said(String sign, boolean present, TextSpan at) {
    return new SignSaid(sign, present, at.from(), at.to());
  }

  private static Reading read(String post, SignSaid... signs) {
    return read(post, new ModelReading(List.of(signs), List.of(), List.of()));
  }

  private static Reading read(String post, ModelReading model) {
    return INTAKE.read(post, null, Optional.empty(), model);
  }

  private static Optional<SignRead> sign(String id, Reading reading) {
    return reading.signs().stream().filter(one -> one.id().equals(id)).findFirst();
  }

  @Test
  void a_sign_that_only_the_model_read_is_added_as_far_as_it_is_trusted() {
    assertEquals(Optional.empty(), sign(RIDES, read(POST)));
    SignRead added = sign(RIDES, read(POST, said(RIDES, true, WANDERS))).orElseThrow();
    assertTrue(added.present());
    assertEquals(WANDERS, added.span());
    assertEquals(TRUST, added.confidence());
    assertEquals(BOOK.catalog().signs().get(RIDES).name(), added.because());
    assertFalse(sign(RIDES, read(POST, said(RIDES, false, WANDERS))).orElseThrow().present());
  }

  @Test
  void what_the_words_read_stays_as_they_read_it() {
    String post = "My soft bra: the straps slip off, the band doesn't ride up at the back.";
    Reading words = read(post);
    TextSpan all = new TextSpan(0, post.length());
    assertTrue(sign(SLIPS, words).orElseThrow().present());
    assertFalse(sign(RIDES, words).orElseThrow().present());
    assertEquals(words, read(post, said(SLIPS, false, all), said(RIDES, true, all)));
  }

  @Test
  void a_model_that_says_both_says_nothing() {
    assertEquals(read(POST), read(POST, said(RIDES, true, WANDERS), said(RIDES, false, WANDERS)));
  }

  @Test
  void a_danger_is_raised_also_in_a_text_about_something_else() {
    assertEquals(Optional.empty(), sign(FAINTED, read(POST)));
    SignRead raised = sign(FAINTED, read(POST, said(FAINTED, true, LAMP))).orElseThrow();
    assertTrue(raised.present());
    assertEquals(LAMP, raised.span());
    String other = "How long does a loaf take to rise? My lamp winked at me.";
    assertFalse(read(other).fitQuestion());
    Reading danger = read(other, said(FAINTED, true, new TextSpan(35, 55)));
    assertTrue(danger.fitQuestion());
    assertTrue(sign(FAINTED, danger).orElseThrow().present());
  }

  @Test
  void a_danger_is_raised_against_its_denial_and_never_lowered() {
    String denied = "My soft bra is on. My hands aren't numb.";
    assertFalse(sign(NUMB, read(denied)).orElseThrow().present());
    for (String post : List.of(denied, "My hands go numb in my soft bra.", POST)) {
      TextSpan all = new TextSpan(0, post.length());
      assertEquals(read(post), read(post, said(NUMB, false, all)), post);
      for (Reading both :
          List.of(
              read(post, said(NUMB, true, all)),
              read(post, said(NUMB, true, all), said(NUMB, false, all)),
              read(post, said(NUMB, false, all), said(NUMB, true, all)))) {
        assertTrue(sign(NUMB, both).orElseThrow().present(), post);
        assertEquals(1, both.signs().stream().filter(one -> one.id().equals(NUMB)).count(), post);
      }
    }
  }

  @Test
  void a_sign_of_another_book_is_left_out() {
    assertEquals(read(POST), read(POST, said("no-such-sign", true, WANDERS)));
  }

  private static Reading length(String post, String name, String value, String quote) {
    TextSpan at = spanOf(quote, post);
    return read(
        post,
        new ModelReading(
            List.of(), List.of(new LengthSaid(name, value, at.from(), at.to())), List.of()));
  }

  private static final String MEASURED =
      "My soft bra wanders. I come to 77 cm where it sits, 94 cm at most, and 12-13 cm beside.";

  @Test
  void a_length_is_the_posts_own_number() {
    assertEquals(List.of(), read(MEASURED).lengths());
    List<LengthRead> read =
        length(MEASURED, "underbust", "770 mm", "I come to 77 cm where it sits").lengths();
    assertEquals(1, read.size());
    assertEquals("underbust", read.get(0).name());
    assertEquals("body", read.get(0).of());
    assertEquals("77 cm", read.get(0).text());
    assertEquals(TRUST, read.get(0).confidence());
  }

  @Test
  void a_length_that_its_passage_does_not_hold_is_left_out() {
    for (List<String> wrong :
        List.of(
            List.of("underbust", "78 cm", "I come to 77 cm where it sits", "another number"),
            List.of("underbust", "77", "I come to 77 cm where it sits", "no unit"),
            List.of("underbust", "a lot", "I come to 77 cm where it sits", "no number"),
            List.of("underbust", "77 in", "I come to 77 cm where it sits", "another unit"),
            List.of("underbust", "94 cm", "I come to 77 cm where it sits", "elsewhere"),
            List.of("underbust", "12 cm", "and 12-13 cm beside", "a range"),
            List.of("shoulderToBustPoint", "12 cm", "and 12-13 cm beside", "a range"))) {
      assertEquals(
          List.of(),
          length(MEASURED, wrong.get(0), wrong.get(1), wrong.get(2)).lengths(),
          wrong.toString());
    }
    String small = "My soft bra wanders. I come to 30 cm where it sits.";
    assertEquals(
        List.of(), length(small, "underbust", "30 cm", "I come to 30 cm").lengths(), "no girth");
  }

  @Test
  void a_length_that_the_words_read_stays_theirs() {
    String post = "My soft bra: underbust 77 cm, and 94 cm at most.";
    Reading words = read(post);
    assertEquals(1, words.lengths().size());
    assertEquals(words, length(post, "underbust", "94 cm", "and 94 cm at most"));
    assertEquals(words, length(post, "bust", "77 cm", "underbust 77 cm"), "taken already");
    assertEquals(2, length(post, "bust", "94 cm", "and 94 cm at most").lengths().size());
    String narrow = "My soft bra: underbust 77 cm, and 70 cm at most.";
    assertEquals(
        read(narrow),
        length(narrow, "bust", "70 cm", "and 70 cm at most"),
        "no bust is smaller than its underbust");
  }

  @Test
  void a_circumstance_is_added_and_none_is_taken_away() {
    String post = "My soft bra wanders. The little one drinks every two hours.";
    TextSpan at = spanOf("The little one drinks every two hours", post);
    ModelReading model =
        new ModelReading(
            List.of(),
            List.of(),
            List.of(
                new CircumstanceSaid("nursing", at.from(), at.to()),
                new CircumstanceSaid("high-impact", at.from(), at.to())));
    assertEquals(List.of(), read(post).circumstances());
    assertEquals(List.of(new TextRead("nursing", at, TRUST)), read(post, model).circumstances());
    String nursing = "I'm nursing, and my soft bra wanders.";
    assertEquals(
        read(nursing),
        read(
            nursing,
            new ModelReading(
                List.of(), List.of(), List.of(new CircumstanceSaid("nursing", 0, 11)))));
  }
}
