package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.UsualBook;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which numbers of a post are measurements, and which of two is meant: common practice. */
class NumbersInPostsTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "My underbust is not 77 cm, it's 82 cm.                 | underbust=82 cm",
        "My underbust isn't 77 cm, it is 82 cm.                 | underbust=82 cm",
        "My underbust is 82, not 77.                            | underbust=82 cm",
        "Underbust 82 cm, not 77 cm.                            | underbust=82 cm",
        "Underbust 82 cm instead of 77 cm.                      | underbust=82 cm",
        "Underbust 77 cm, sorry, I meant 82 cm.                 | underbust=82 cm",
        "Underbust 77 cm. Sorry, I meant 82 cm.                 | underbust=82 cm",
        "Underbust 77 cm, sorry 82 cm.                          | underbust=82 cm",
        "Underbust is 77, no wait, 82.                          | underbust=82 cm",
        "Underbust is 77, I mean 82.                            | underbust=82 cm",
        "Underbust 77 cm - scrap that, 82 cm.                   | underbust=82 cm",
        "Underbust 77 cm, make that 82 cm.                      | underbust=82 cm",
        "Underbust 77 cm, actually 82 cm.                       | underbust=82 cm",
        "Underbust 77 cm (correction: 82 cm).                   | underbust=82 cm",
        "Underbust 77, edit: 82.                                | underbust=82 cm",
        "Underbust 77 cm, oops, that should be 82 cm.           | underbust=82 cm",
        "Underbust 77 cm or rather 82 cm.                       | underbust=82 cm",
        "Bust 92 cm, sorry, bust 94 cm.                         | bust=94 cm",
        "Bust 92, underbust 77, no, 82.                         | bust=92 cm, underbust=82 cm",
        "Underbust 77 cm, scrap that, I will measure again.     | ''",
        "Underbust 77 cm. Ignore that.                          | ''",
        "My bust is not 77 cm.                                  | ''",
        "Bust 37 in, sorry, I meant 38 in.                      | bust=38 in",
        "Bust 94 cm, underbust is not 77 cm but 82 cm.          | bust=94 cm, underbust=82 cm",
        "My underbust is not 77 cm, it’s 82 cm, bust 94.        | bust=94 cm, underbust=82 cm"
      })
  void of_two_amounts_the_corrected_one_is_meant(String text, String lengths) {
    assertEquals(lengths.equals("''") ? "" : lengths, lengths(text));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "Underbust 75-77 cm.             | underbust=76 cm",
        "Underbust 75–77 cm.             | underbust=76 cm",
        "Underbust between 75 and 77 cm. | underbust=76 cm",
        "Underbust between 75 and 77.    | underbust=76 cm",
        "Underbust 75 to 77 cm.          | underbust=76 cm",
        "Underbust 75 or 76.             | underbust=75.5 cm",
        "Bust 38-39 inches.              | bust=38.5 in"
      })
  void a_narrow_range_counts_by_its_middle(String text, String lengths) {
    assertEquals(lengths, lengths(text));
    assertTrue(Reader.read(text).notUnderstood().isEmpty());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"Underbust 75-80 cm.", "Underbust between 70 and 77.", "Bust 36 to 38 inches."})
  void a_wide_range_is_quoted_and_asked_about(String text) {
    Reading read = Reader.read(text);
    assertEquals("", lengths(text));
    String asked =
        read.notUnderstood().stream()
            .map(one -> one.span().in("Soft bra, the band and straps. " + text))
            .collect(Collectors.joining());
    assertTrue(asked.matches(".*\\d\\d.*\\d\\d.*"), asked);
  }

  @ParameterizedTest
  @ValueSource(strings = {"Underbust -77 cm.", "Underbust: -77 cm.", "Underbust −77 cm."})
  void a_length_with_a_sign_is_read_less_surely_and_quoted_with_it(String text) {
    Reading read = Reader.read(text);
    assertEquals("underbust=77 cm", lengths(text));
    assertTrue(read.lengths().get(0).confidence() < 0.7);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "I am 30 and my bust is 94.                               | bust=94 cm",
        "I'm 45, bust 94 cm, underbust 77 cm.                     | bust=94 cm, underbust=77 cm",
        "My age is 45 and bust is 94 cm and underbust 77 cm.      | bust=94 cm, underbust=77 cm",
        "I am 13 and my bust is 72 cm and my underbust 64 cm.     | bust=72 cm, underbust=64 cm",
        "I am 30 and my bust is 94 cm and my underbust 77 cm.     | bust=94 cm, underbust=77 cm",
        "Age 52, bust 101, underbust 85.                          | bust=101 cm, underbust=85 cm",
        "She is 28 and her bust is 94.                            | bust=94 cm",
        "I'm nearly 60 and my bust is 98 cm.                      | bust=98 cm",
        "Turning 50 this year, underbust 82.                      | underbust=82 cm",
        "I am 96 around the bust and 79 underneath.               | bust=96 cm, underbust=79 cm",
        "I'm 41 in the bust and 36 under it.                      | bust=41 in, underbust=36 in",
        "Born in 1994, bust 94.                                   | bust=94 cm",
        "Born in 94, bust 98 cm.                                  | bust=98 cm",
        "I was born in '78 and my bust is 98.                     | bust=98 cm",
        "I paid 34 dollars and my bust is 94.                     | bust=94 cm",
        "I paid 34 for the pattern, bust 94.                      | bust=94 cm",
        "The cloth cost 45, underbust 77.                         | underbust=77 cm",
        "It cost me 60 EUR, bust 94.                              | bust=94 cm",
        "My bust needed 34 pins and is 94 cm.                     | bust=94 cm",
        "I used 40 stitches under the bust.                       | ''",
        "It took 34 minutes. Bust 94.                             | bust=94 cm",
        "On 23 March my bust was measured at 94 cm.               | bust=94 cm",
        "On March 23 I measured my bust: 94 cm.                   | bust=94 cm",
        "I weigh 60 and my bust is 94.                            | bust=94 cm",
        "My weight is 62, bust 94 cm.                             | bust=94 cm",
        "I am 170 cm tall, bust 94 cm.                            | bust=94 cm",
        "Height 165 cm, bust 94 cm, underbust 77 cm.              | bust=94 cm, underbust=77 cm",
        "My shoes are 39 and my bust is 94.                       | bust=94 cm",
        "Shoe size 39, bust 94.                                   | bust=94 cm",
        "Ring me on 94 77 12 33 about the bust.                   | ''",
        "Call 555 1234 if the bust is 94.                         | bust=94 cm",
        "Waist 72, hips 98, bust 94.                              | bust=94 cm",
        "Bust 94, waist 72, hips 98.                              | bust=94 cm",
        "Page 34 shows the bust, mine is 94 cm.                   | bust=94 cm",
        "My bust is 94 and I have 30 toiles.                      | bust=94 cm"
      })
  void numbers_of_other_things_measure_nobody(String text, String lengths) {
    assertEquals(lengths.equals("''") ? "" : lengths, lengths(text));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "I took the band in 1 cm on each side.                 | take-in-the-band 2 x 1 cm",
        "I took the band in by 1 cm at each side seam.         | take-in-the-band 2 x 1 cm",
        "I took in the band 5 mm per side.                     | take-in-the-band 2 x 5 mm",
        "I took in the band 2 cm.                              | take-in-the-band 2 cm",
        "I let out the band 1 cm on both sides.                | let-out-the-band 2 x 1 cm",
        "I shortened the straps 1 cm on each side.             | shorten-the-straps 2 x 1 cm",
        "I shortened the straps by 10 mm, sorry, 15 mm.        | shorten-the-straps 15 mm"
      })
  void what_was_done_on_each_side_keeps_its_places(String text, String change) {
    assertEquals(
        change,
        Reader.read(text).earlier().stream()
            .map(one -> one.adjustment() + " " + one.amount().text())
            .collect(Collectors.joining(", ")));
  }

  @Test
  void a_change_measures_nobody() {
    for (String text :
        List.of(
            "The bust went up 1.5 cm.",
            "I took the 10 mm out of the bust seam.",
            "Took the 20 mm out under the bust.",
            "The underbust elastic went down 30 mm.",
            "The band rode up 3 cm at the underbust.")) {
      assertEquals("", lengths(text), text);
    }
  }

  /** Where two points lie is not by how much one is off. */
  @Test
  void a_height_below_the_shoulder_is_no_shift_of_the_fullest_point() {
    String off = "The fullest point of the cup is 24.5 cm too high for me.";
    assertEquals(List.of(), shifts(off));
    assertEquals(List.of(25.0), shifts(off.replace("24.5", "2.5")));
  }

  private static List<Double> shifts(String text) {
    return Reader.read(text).signs().stream()
        .filter(one -> one.id().equals("fullest-point-of-the-garment-too-high"))
        .filter(one -> one.amount() != null)
        .map(one -> one.amount().mm())
        .toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"¼", "½\"", "— ¾ —"})
  void a_text_of_signs_alone_says_nothing(String text) {
    Reading read = new Intake(UsualBook.read()).read(text);
    assertEquals(List.of(), read.lengths());
  }

  /** Sentences about ages, dates, prices and counts, whatever number stands in them. */
  @Property(tries = 400)
  void no_number_of_another_thing_is_ever_a_measurement(@ForAll("others") String text) {
    assertEquals("", lengths(text), text);
  }

  @Provide
  Arbitrary<String> others() {
    Arbitrary<String> sentences =
        Arbitraries.of(
            "I am # and sew for my bust.",
            "I'm # now, and the bust fits.",
            "My age is #, the bust fits.",
            "Aged #, the underbust is fine.",
            "She turned # when the bust fitted.",
            "I was born in #, bust fits.",
            "In March # I sewed the bust.",
            "On # April the bust fitted.",
            "The bust pattern cost #.",
            "I paid # for bust cups.",
            "The bust cost me # euros.",
            "Under the bust I put # pins.",
            "The bust took # stitches.",
            "The bust has # notches.",
            "I sewed the bust # times.",
            "The bust took # minutes.",
            "I weigh #, the bust fits.",
            "Shoe size # and the bust fits.",
            "My shoes are #, the bust is fine.",
            "Call me on # 12 34 56 about the bust.",
            "I have # people asking about the bust.",
            "The bust is on page #.");
    return sentences.flatMap(
        one ->
            Arbitraries.integers()
                .between(20, 109)
                .map(number -> one.replace("#", String.valueOf(number))));
  }

  private static String lengths(String text) {
    Map<String, String> read = new TreeMap<>();
    Reader.read(text).lengths().forEach(one -> read.put(one.name(), one.text()));
    return read.entrySet().stream().map(Object::toString).collect(Collectors.joining(", "));
  }
}
