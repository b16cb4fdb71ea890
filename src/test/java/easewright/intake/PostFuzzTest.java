package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import easewright.fuzz.LinearTime;
import easewright.measure.Quantity;
import easewright.number.Amount;
import easewright.number.AmountRead;
import easewright.number.TextSpan;
import easewright.rulebook.UsualBook;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Tag;

/**
 * Whatever is written is read: what was read stands in the text and is in the form of a request,
 * and no text takes longer than its length.
 */
@Tag("long")
@net.jqwik.api.Tag("long")
class PostFuzzTest {
  /** As long as the service takes a text. */
  private static final int LONGEST = 4000;

  /** Taking the time costs a hundred readings, so while searching only some texts are timed. */
  private static final int TIMED = System.getenv("JAZZER_FUZZ") == null ? 1 : 32;

  private static final Intake INTAKE = new Intake(UsualBook.read());

  @FuzzTest(maxDuration = "4m")
  void any_bytes(byte[] bytes) {
    read(new String(bytes, StandardCharsets.UTF_8));
  }

  @Property(tries = 150)
  void words_of_posts_in_any_order(@ForAll("texts") String text) {
    read(text);
  }

  private static void read(String text) {
    String post = text.length() > LONGEST ? text.substring(0, LONGEST) : text;
    assertAmounts(Reader.amounts(post), post);
    Reading reading = INTAKE.read(post);
    spans(reading).forEach(span -> assertWithin(span, post));
    quantities(reading).forEach(Quantity::parse);
    if (post.hashCode() % TIMED == 0) {
      LinearTime.check(post, LONGEST, INTAKE::read);
    }
  }

  private static void assertAmounts(List<Amount> amounts, String post) {
    int last = 0;
    for (Amount amount : amounts) {
      assertWithin(amount.span(), post);
      assertTrue(amount.span().from() >= last, "in order and apart: " + amounts);
      last = amount.span().to();
    }
  }

  private static void assertWithin(TextSpan span, String post) {
    assertTrue(
        0 <= span.from() && span.from() < span.to() && span.to() <= post.length(), span::toString);
  }

  private static Stream<TextSpan> spans(Reading reading) {
    return Stream.of(
            reading.signs().stream().map(Reading.SignRead::span),
            reading.lengths().stream().map(Reading.LengthRead::span),
            reading.cloths().stream().map(Reading.ClothRead::span),
            reading.circumstances().stream().map(Reading.TextRead::span),
            reading.earlier().stream().map(Reading.ChangeRead::span),
            reading.suspected().stream().map(Reading.TextRead::span),
            reading.told().spans().stream(),
            reading.couldNotTell().stream().map(Reading.TextRead::span),
            reading.notUnderstood().stream().map(Reading.NotUnderstood::span),
            Stream.of(reading.sizeCut(), reading.monthsSinceOperation())
                .filter(Objects::nonNull)
                .map(Reading.TextRead::span))
        .flatMap(spans -> spans);
  }

  private static Stream<String> quantities(Reading reading) {
    return Stream.of(
            amounts(reading).map(AmountRead::from),
            amounts(reading).map(AmountRead::to),
            reading.lengths().stream().map(Reading.LengthRead::text),
            reading.cloths().stream().flatMap(cloth -> cloth.lengths().values().stream()))
        .flatMap(texts -> texts)
        .filter(Objects::nonNull);
  }

  private static Stream<AmountRead> amounts(Reading reading) {
    return Stream.concat(
            reading.signs().stream().map(Reading.SignRead::amount),
            Stream.concat(
                reading.earlier().stream().map(Reading.ChangeRead::amount),
                reading.told().trials().stream().map(Told.TrialRead::amount)))
        .filter(Objects::nonNull);
  }

  @Provide
  Arbitrary<String> texts() {
    Arbitrary<String> words =
        Arbitraries.of(
            "the band",
            "rides up",
            "at the back",
            "straps",
            "slip off",
            "neckline",
            "gapes",
            "gape",
            "cups",
            "too big",
            "dig in",
            "armhole",
            "not",
            "isn't",
            "no longer",
            "never",
            "n't",
            "I think",
            "maybe",
            "if",
            "but",
            "and",
            "or",
            "?",
            "!",
            "...",
            ",",
            ";",
            ":",
            "\n",
            "\n\n> ",
            "(",
            ")",
            "\"",
            "“",
            "’",
            "34",
            "1/4",
            "34 1/4\"",
            "¼",
            "86,5cm",
            "half an inch",
            "an inch and a half",
            "a couple of inches",
            "1-2 cm",
            "to",
            "3 ft",
            "36D",
            "80C",
            "EU 75",
            "size",
            "bust",
            "underbust is",
            "measured",
            "10 cm",
            "stretches to",
            "15 cm",
            "50 %",
            "shortened",
            "pinned",
            "shorter",
            "lies flat",
            "is",
            "elastic",
            "over a padded bra",
            "pull-on",
            "should I",
            "took in",
            "by",
            "2 cm",
            "worse",
            "better",
            "surgery",
            "6 months ago",
            "numb",
            "rash",
            "left",
            "right side",
            "both",
            "a bit",
            "really",
            "really really",
            "yes",
            "no",
            "can't tell",
            "9".repeat(30),
            "a".repeat(40),
            "/",
            "-",
            "—",
            "\u0000",
            "\ud83d",
            "\ud83d\ude00",
            "İ",
            "ß",
            "e\u0301",
            "\u200d",
            "\u2028",
            "\t",
            " ");
    return words
        .list()
        .ofMaxSize(24)
        .flatMap(some -> Arbitraries.of(" ", " ", "", "  ").map(gap -> String.join(gap, some)));
  }
}
