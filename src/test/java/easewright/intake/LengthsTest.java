package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.intake.Reading.LengthRead;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

// How measurements are told: common practice. Girths from 20 to 56 in are inches, above that
// centimetres: the ranges of women's chest girths in both units do not meet.
class LengthsTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "Bust 38, underbust 33.                              | 38 in     | 33 in",
        "38 bust 33 under.                                   | 38 in     | 33 in",
        "bust: 96,5cm; underbust: 81 cm.                     | 96.5 cm   | 81 cm",
        "I am 96 around the bust and 79 underneath.          | 96 cm     | 79 cm",
        "My ribs are 31½ and my full bust is 36¼.            | 36 1/4 in | 31 1/2 in",
        "Bust and underbust are 96 and 79 cm.                | 96 cm     | 79 cm",
        "bust/underbust 38/33.                               | 38 in     | 33 in",
        "I am 38 1/2 over 33.                                | 38 1/2 in | 33 in",
        "Chest is thirty-eight inches, rib cage thirty-two.  | 38 in     | 32 in",
        "I'm 41 in the bust and 36 under it.                 | 41 in     | 36 in",
        "I'm 5'4\", bust 36, underbust 31.                   | 36 in     | 31 in",
        "bust 940 mm, under the bust 760 mm.                 | 940 mm    | 760 mm",
        "bust 38-39 inches, underbust 33.                    | 38.5 in   | 33 in",
        "Bust 38 inches but the ribs are 83 cm.              | 38 in     | 83 cm"
      })
  void bust_and_underbust_are_read_in_any_order(String text, String bust, String under) {
    assertEquals(Map.of("body bust", bust, "body underbust", under), lengths(text));
  }

  @Test
  void the_other_measurements_have_their_names() {
    assertEquals(
        Map.of(
            "body upperChest", "88 cm",
            "body bustPointWidth", "19 cm",
            "body shoulderToBustPoint", "26 cm"),
        lengths("Upper chest 88 cm, apex to apex 19 cm, shoulder to bust point 26 cm."));
  }

  @Test
  void what_was_measured_flat_on_the_table_is_the_garments() {
    assertEquals(
        Map.of("garment underband", "28 in", "body underbust", "31 in"),
        lengths("The band is 28 inches flat on the table and my underbust is 31."));
    assertEquals(
        Map.of("garment underband", "28 in", "garment bust", "33 in", "body bust", "36 in"),
        lengths("Laid flat the band is 28 and the bust 33, my bust is 36."));
    assertEquals(
        Map.of("garment underband", "70 cm", "body underbust", "82 cm"),
        lengths("the band is 70cm round when its on the table and im 82 cm under the bust."));
  }

  @Test
  void an_assumed_unit_is_said_to_be_assumed() {
    LengthRead bare = Reader.read("Bust 38.").lengths().get(0);
    LengthRead written = Reader.read("Bust 38 in.").lengths().get(0);
    assertTrue(bare.unitAssumed());
    assertFalse(written.unitAssumed());
    assertTrue(bare.confidence() < written.confidence());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "The size chart says 92 bust for this one.",
        "The pattern is drafted for a 36 bust.",
        "The bust seam is 38 cm.",
        "The underbust elastic is 70 cm.",
        "The bust gapes 2 cm.",
        "Under 30 minutes to sew.",
        "It took under 40 days.",
        "The bust took 2 yards.",
        "Underbust 38, bust 33.",
        "I sewed the bust on 12/03/2024.",
        "The band is 28."
      })
  void what_is_no_measurement_of_the_wearer_is_not_read(String text) {
    assertEquals(Map.of(), lengths(text));
  }

  @Test
  void what_is_so_now_outweighs_what_was() {
    assertEquals(
        Map.of("body underbust", "32 in"),
        lengths("Underbust used to be 30, now it is 32 underbust."));
  }

  private static Map<String, String> lengths(String text) {
    Map<String, String> read = new TreeMap<>();
    Reader.read(text).lengths().forEach(one -> read.put(one.of() + " " + one.name(), one.text()));
    return read;
  }
}
