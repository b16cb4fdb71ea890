package easewright.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import easewright.fuzz.LinearTime;
import java.nio.charset.StandardCharsets;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/**
 * Any text is either parsed as a quantity that reads back unchanged, or rejected with two
 * sentences.
 */
class QuantityFuzzTest {

  @FuzzTest(maxDuration = "4m")
  void any_bytes(byte[] bytes) {
    readOrRefused(new String(bytes, StandardCharsets.UTF_8));
  }

  @Property(tries = 20_000)
  void numbers_marks_and_units_in_any_order(@ForAll("texts") String text) {
    readOrRefused(text);
  }

  private static void readOrRefused(String text) {
    try {
      Quantity read = Quantity.parse(text);
      assertTrue(read.number() >= 0 && read.number() < 2e6, text);
      assertPlainTextReadsBack(read);
    } catch (BadQuantity refused) {
      assertTrue(refused.problem().length() < 100, refused.problem());
      assertTrue(refused.problem().endsWith("."), refused.problem());
      assertTrue(refused.remedy().endsWith("."), refused.remedy());
    }
    LinearTime.check(text, 40_000, QuantityFuzzTest::read);
  }

  /** Only a number with more decimals than a tape shows may be rejected as too long. */
  private static void assertPlainTextReadsBack(Quantity read) {
    String plain = read.text();
    if (plain.length() <= QuantityReader.LONGEST) {
      assertEquals(read, Quantity.parse(plain));
    }
  }

  private static void read(String text) {
    try {
      Quantity.parse(text);
    } catch (BadQuantity refused) {
      // as it may be
    }
  }

  @Provide
  Arbitrary<String> texts() {
    Arbitrary<String> parts =
        Arbitraries.of(
            "0",
            "7",
            "34",
            "999999",
            "1/4",
            "15/16",
            "¼",
            "⅟",
            "②",
            "²",
            "/",
            "⁄",
            "∕",
            ".",
            ",",
            "-",
            "–",
            "−",
            " ",
            "\u00a0",
            "\u2009",
            "\n",
            "\u0000",
            "\ud83d",
            "e9",
            "in",
            "\"",
            "″",
            "''",
            "cm",
            "mm",
            "m",
            "N/cm",
            "g/m²",
            "oz/yd²",
            "%",
            "kPa",
            "mmHg",
            "inches",
            "CM",
            "İn",
            "ﬁ",
            "٣",
            "１",
            "½½",
            "+",
            "NaN",
            "Infinity",
            "0x1p3",
            "1d");
    return parts.list().ofMaxSize(9).map(some -> String.join("", some));
  }
}
