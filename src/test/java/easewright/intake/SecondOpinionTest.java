package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.intake.Reading.SignRead;
import easewright.reading.TrainedReader;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The trained reader as a second opinion on dangers that the words read. What is a danger follows
 * public health advice on when to seek help, which each sign names as its source; that doubt leaves
 * the judgement to a person is common practice of safety.
 */
@Tag("long")
class SecondOpinionTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Intake INTAKE = new Intake(BOOK);
  private static final Optional<TrainedReader> TRAINED = Optional.of(TrainedReader.shipped());
  private static final String AROUND =
      "I made my first soft bra from the pattern and the straps stay up. %s The colour is lovely."
          + " Which seam should I change?";

  private static List<String> dangers(Reading reading) {
    return reading.signs().stream()
        .filter(SignRead::present)
        .map(SignRead::id)
        .filter(id -> BOOK.catalog().signs().get(id).redFlag())
        .toList();
  }

  /** Lines and posts of strangers that tell of a danger. */
  private static Stream<String> told() {
    Stream<String> lines =
        DangerPost.in("dangers").stream()
            .flatMap(hand -> hand.posts().stream())
            .filter(post -> post.danger() != null)
            .map(DangerPost::text);
    Stream<String> posts =
        Stream.of("e1", "e3", "e4")
            .flatMap(set -> SignPost.in("posts-strangers/" + set).stream())
            .filter(post -> post.present().stream().anyMatch(SecondOpinionTest::isDanger))
            .map(SignPost::text);
    return Stream.concat(lines, posts);
  }

  private static boolean isDanger(String sign) {
    SignEntry entry = BOOK.catalog().signs().get(sign);
    return entry != null && entry.redFlag();
  }

  /** The stops of the words that the second opinion takes away. */
  private static List<String> lost(UnaryOperator<String> written) {
    List<String> lost = new ArrayList<>();
    told()
        .map(written)
        .forEach(
            text -> {
              if (!dangers(INTAKE.read(text)).isEmpty()
                  && dangers(INTAKE.read(text, null, TRAINED)).isEmpty()) {
                lost.add(text);
              }
            });
    return lost;
  }

  /** Two neighbouring letters of every sixth word change places. */
  private static String withSlips(String text) {
    Random random = new Random(text.hashCode());
    StringBuilder slips = new StringBuilder(text);
    for (int i = 1; i + 2 < text.length(); i++) {
      if (Character.isLetter(text.charAt(i))
          && Character.isLetter(text.charAt(i + 1))
          && random.nextInt(30) == 0) {
        slips.setCharAt(i, text.charAt(i + 1));
        slips.setCharAt(i + 1, text.charAt(i));
        i++;
      }
    }
    return slips.toString();
  }

  @Test
  void no_danger_in_view_is_lost_however_it_is_written() {
    assertEquals(List.of(), lost(text -> text));
    assertEquals(List.of(), lost(text -> text.toUpperCase(Locale.ROOT)));
    assertEquals(List.of(), lost(text -> text.replaceAll("\\p{Punct}", " ")));
    assertEquals(List.of(), lost(text -> AROUND.formatted(text)));
    assertEquals(List.of(), lost(SecondOpinionTest::withSlips));
  }

  @Test
  void no_phrase_of_a_danger_is_lost() {
    List<String> lost = new ArrayList<>();
    for (SignEntry sign : BOOK.catalog().signs().values()) {
      if (sign.redFlag()) {
        sign.phrases().stream()
            .filter(phrase -> dangers(INTAKE.read(phrase, null, TRAINED)).isEmpty())
            .forEach(lost::add);
      }
    }
    assertEquals(List.of(), lost);
  }

  /** Said of seams and of eggs; what is left in doubt is for a person to read. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "I can get my whole fist between the band and my spine, so it's hardly strangling me!",
        "The band rides up. When I take the bra off there is a faint line that has vanished by the"
            + " time the kettle boils.",
        "The cups are handsome if I pin a tuck in the band at the back, smooth as a boiled egg.",
        "Right, feedback on the bra for whoever told me to shorten the elastic, and no hard"
            + " feelings because I asked.",
        "Third bra I have made and for once nothing digs and I can breath properly.",
        "The band of the bra rides up. Daughter says the new one \"feels weird, dad\"."
      })
  void words_that_only_sound_like_a_danger_stop_nothing(String text) {
    assertEquals(List.of(), dangers(INTAKE.read(text, null, TRAINED)));
  }

  @Test
  void what_the_second_opinion_finds_no_trace_of_is_marked_as_not_understood() {
    String text =
        "I come back to tell you! Before, the straps of my bra were too short and there were hard"
            + " lines from the point of the breast until the strap. Now no lines, thank you.";
    assertEquals(List.of("hot-red-or-painful-area"), dangers(INTAKE.read(text)));
    Reading both = INTAKE.read(text, null, TRAINED);
    assertEquals(List.of(), dangers(both));
    assertTrue(
        both.notUnderstood().stream().anyMatch(one -> one.span().in(text).contains("breast")),
        both::toString);
    assertEquals(List.of(), both.readYourself());
  }
}
