package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.number.Amount;
import java.time.Duration;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

// Ways of writing amounts: common practice. Fraction characters and their values: the Unicode
// Standard, blocks Latin-1 Supplement and Number Forms ("VULGAR FRACTION ONE QUARTER" and so on).
class AmountFinderTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "it gapes 34 1/4\" today           | 34.25  | in",
        "34-1/4 inches                     | 34.25  | in",
        "34 and 1/4 in                     | 34.25  | in",
        "34 & 3/8 in.                      | 34.375 | in",
        "34¼ in                            | 34.25  | in",
        "34 ¼″                             | 34.25  | in",
        "34¾''                             | 34.75  | in",
        "1½”                               | 1.5    | in",
        "34.25in                           | 34.25  | in",
        "34.125 inches                     | 34.125 | in",
        ".75\" too long                    | 0.75   | in",
        "0,125 in                          | 0.125  | in",
        "3/8\"                             | 0.375  | in",
        "3/8ths of an inch                 | 0.375  | in",
        "3/8ths inch                       | 0.375  | in",
        "1/2 an inch                       | 0.5    | in",
        "5⁄8 inch                          | 0.625  | in",
        "⅞ inch                            | 0.875  | in",
        "½cm                               | 0.5    | cm",
        "half an inch                      | 0.5    | in",
        "a half inch                       | 0.5    | in",
        "Half a cm                         | 0.5    | cm",
        "a good half inch                  | 0.5    | in",
        "a quarter of an inch              | 0.25   | in",
        "quarter inch                      | 0.25   | in",
        "three quarters of an inch         | 0.75   | in",
        "three-quarter inch                | 0.75   | in",
        "3 quarters of an inch             | 0.75   | in",
        "an eighth of an inch              | 0.125  | in",
        "five eighths of an inch           | 0.625  | in",
        "three sixteenths of an inch       | 0.1875 | in",
        "two thirds of an inch             | 0.6667 | in",
        "an inch                           | 1      | in",
        "a whole inch                      | 1      | in",
        "another inch                      | 1      | in",
        "an inch and a half                | 1.5    | in",
        "inch and a half                   | 1.5    | in",
        "an inch and three quarters        | 1.75   | in",
        "2 inches and a quarter            | 2.25   | in",
        "one and a half inches             | 1.5    | in",
        "1 and a half inches               | 1.5    | in",
        "2 and a half cm                   | 2.5    | cm",
        "two inches                        | 2      | in",
        "a couple of inches                | 2      | in",
        "a two-inch gap                    | 2      | in",
        "twelve mm                         | 12     | mm",
        "thirty-eight inches               | 38     | in",
        "thirty four and a half inches     | 34.5   | in",
        "a hundred and four cm             | 104    | cm",
        "eighty one centimetres            | 81     | cm",
        "86,5cm                            | 86.5   | cm",
        "86.5 cms                          | 86.5   | cm",
        "86.5 centimeters                  | 86.5   | cm",
        "15mm                              | 15     | mm",
        "6 millimetres                     | 6      | mm",
        "1200 mm                           | 1200   | mm",
        "2ish cm                           | 2      | cm",
        "about 2.5-cm                      | 2.5    | cm",
        "34 inchs                          | 34     | in",
        "50%                               | 50     | %",
        "50 per cent                       | 50     | %"
      })
  void an_amount_is_read_however_it_is_written(String text, double number, String unit) {
    Amount amount = only(text);
    assertEquals(number, amount.value(), 1e-4);
    assertEquals(unit, amount.unit());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "1-2 cm                    | 1    | cm",
        "1 to 2 cm                 | 1    | cm",
        "1 cm to 2 cm              | 1    | cm",
        "1 or 2cm                  | 1    | cm",
        "between 1 and 2 cm        | 1    | cm",
        "1/2–3/4 inch              | 0.5  | in",
        "1 1/2 - 2\"               | 1.5  | in",
        "one to two inches         | 1    | in",
        "an inch or two            | 1    | in",
        "a cm or two               | 1    | cm",
        "bust 38-39                | 38   |"
      })
  void a_range_takes_the_smaller(String text, double number, String unit) {
    Amount amount = only(text);
    assertEquals(number, amount.value(), 1e-9);
    assertEquals(unit, amount.unit());
    assertTrue(amount.most() != null);
  }

  @Test
  void a_fall_is_no_range() {
    List<Amount> amounts = Reader.amounts("it went from 3 cm to 1 cm");
    assertEquals(List.of("3", "1"), amounts.stream().map(Amount::number).toList());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a 75/11 needle",
        "needle size 90",
        "2 yards of jersey",
        "3 metres of lace",
        "1.5 m wide",
        "6 ft of elastic",
        "I am 5'4\"",
        "I am 5 ft 4 in tall",
        "220 gsm",
        "200g cotton",
        "at 10:30",
        "on 12/03/2024",
        "in 2024",
        "for $12.99",
        "£15",
        "she is 13 years old",
        "my 13yo",
        "wore it 3 hours",
        "ran 10 km",
        "a 5k",
        "the 2nd toile",
        "toile 2",
        "size 12",
        "24/7",
        "38.6 degrees",
        "4 way stretch",
        "4-way stretch",
        "three kids",
        "two layers",
        "my third toile",
        "half the band",
        "a quarter turn",
        "one of them",
        "1,250 mm",
        "10 cm²",
        "555-1234567"
      })
  void what_measures_nothing_is_passed_over(String text) {
    assertTrue(
        Reader.amounts(text).stream().noneMatch(one -> one.unit() != null || one.value() >= 20),
        () -> Reader.amounts(text).toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"36 in the back", "36 in my bust", "41 in front", "36 in size M"})
  void a_preposition_is_no_inch(String text) {
    assertEquals(null, Reader.amounts(text).get(0).unit());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"34 in.", "34 in around", "34 in under the bust", "34 in", "34 in in all"})
  void inches_may_be_shortened(String text) {
    assertEquals("in", only(text).unit());
  }

  @Test
  void a_closing_quote_is_no_inch_mark() {
    List<Amount> amounts = Reader.amounts("she said \"try 36\" and it was 3\" too long");
    assertEquals(null, amounts.get(0).unit());
    assertEquals("in", amounts.get(1).unit());
  }

  @Test
  void two_girths_with_a_slash_are_two_amounts() {
    List<Amount> amounts = Reader.amounts("bust/under 96/79 cm");
    assertEquals(List.of(96.0, 79.0), amounts.stream().map(Amount::value).toList());
    assertEquals(List.of("cm", "cm"), amounts.stream().map(Amount::unit).toList());
  }

  @Test
  void the_span_covers_the_words_of_the_amount() {
    String text = "gapes by an inch and a half, I think";
    assertEquals("an inch and a half", only(text).span().in(text));
  }

  @Property
  void inches_in_any_writing_are_read_back(
      @ForAll @IntRange(max = 60) int whole,
      @ForAll @IntRange(min = 1, max = 7) int eighths,
      @ForAll("inch") String unit,
      @ForAll("joint") String joint) {
    String sign = "⅛¼⅜½⅝¾⅞".substring(eighths - 1, eighths);
    double number = whole + eighths / 8.0;
    String lead = whole == 0 ? "" : String.valueOf(whole);
    assertRead(number, "in", (whole == 0 ? "" : whole + joint) + eighths + "/8" + unit);
    assertRead(number, "in", lead + sign + unit);
    assertRead(number, "in", number + unit);
    if (whole == 0 || eighths % 2 == 0) { // "1,125" may be a thousand and more
      assertRead(number, "in", String.valueOf(number).replace('.', ',') + unit);
    }
  }

  @Property
  void centimetres_in_any_writing_are_read_back(
      @ForAll @IntRange(min = 1, max = 1800) int mm, @ForAll("metric") String unit) {
    String number = mm / 10 + "." + mm % 10;
    assertRead(mm / 10.0, "cm", number + unit);
    assertRead(mm / 10.0, "cm", number.replace('.', ',') + unit);
    assertRead(mm, "mm", mm + unit.replace("centi", "milli").replace("cm", "mm"));
  }

  @Property
  void whole_numbers_in_words_are_read_back(@ForAll @IntRange(min = 1, max = 99) int number) {
    assertRead(number, "cm", "it is " + words(number) + " cm");
    assertRead(number + 0.5, "in", words(number) + " and a half inches");
  }

  @Property(tries = 2000)
  void any_text_is_read_in_order_and_within_its_bounds(@ForAll("scraps") String text) {
    int last = 0;
    for (Amount one : Reader.amounts(text)) {
      assertTrue(one.span().from() >= last && one.span().to() <= text.length());
      assertTrue(one.span().from() < one.span().to());
      assertTrue(one.quantity("cm").isPresent(), one::toString);
      last = one.span().to();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"1 ", "1/", "1-", "a ", "one hundred and ", "½", "\"", "1,", ".", "in ", "1 in "})
  void repeating_a_scrap_takes_no_long_time(String scrap) {
    String text = scrap.repeat(20_000);
    assertTimeoutPreemptively(Duration.ofSeconds(10), () -> Reader.amounts(text));
  }

  @Provide
  Arbitrary<String> inch() {
    return Arbitraries.of("\"", " in", "in", " inches", " inch", "''", "″", "”", "-inch");
  }

  @Provide
  Arbitrary<String> joint() {
    return Arbitraries.of(" ", "-", " and ", " & ", "\u00a0");
  }

  @Provide
  Arbitrary<String> metric() {
    return Arbitraries.of("cm", " cm", "-cm", " centimetres", " centimeters", "cms");
  }

  @Provide
  Arbitrary<String> scraps() {
    Arbitrary<String> known =
        Arbitraries.of(
            "1", "34", "1/2", "½", " ", "-", "/", "\"", "''", "in", "cm", "a", "an inch", "half",
            "hundred", "and", "one", "forty", ".", ",", "to", "or", "'", "%", "\n", "ths", "of");
    return Combinators.combine(known.list().ofMaxSize(20), Arbitraries.strings().ofMaxLength(8))
        .as((list, other) -> String.join("", list) + other + String.join(" ", list));
  }

  private static String words(int number) {
    List<String> small =
        List.of(
            "",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
            "sixteen",
            "seventeen",
            "eighteen",
            "nineteen");
    List<String> tens =
        List.of("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety");
    if (number < 20) {
      return small.get(number);
    }
    String ten = tens.get(number / 10 - 2);
    return number % 10 == 0 ? ten : ten + "-" + small.get(number % 10);
  }

  private static void assertRead(double number, String unit, String text) {
    Amount amount = only(text);
    assertEquals(number, amount.value(), 1e-9, text);
    assertEquals(unit, amount.unit(), text);
  }

  private static Amount only(String text) {
    List<Amount> amounts = Reader.amounts(text);
    assertEquals(1, amounts.size(), () -> text + ": " + amounts);
    return amounts.get(0);
  }
}
