package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.intake.Reading.ClothRead;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

// The ruler test of cloth, and how it is told: common practice.
class ClothTestsTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "10 cm stretches to 16 and comes back to 10.5.            | 10 cm | 16 cm    | 10.5 cm",
        "I marked 10 cm, it pulls round to 17.5 cm, settles at 10.2. | 10 cm | 17.5 cm | 10.2 cm",
        "4\" of the fabric goes to 6 1/2\".                       | 4 in  | 6 1/2 in | ~~",
        "The knit: 10 cm -> 15 cm.                                | 10 cm | 15 cm    | ~~",
        "Stretch test: from 10 to 16 cm.                          | 10 cm | 16 cm    | ~~",
        "The jersey went from 5cm to 9cm, back to 5.2 cm.         | 5 cm  | 9 cm     | 5.2 cm",
        "A 10 cm mark pulled out to 18 cm and sprang back to 10.  | 10 cm | 18 cm    | 10 cm",
        "10 cm stretches to 16 and goes right back to where it was. | 10 cm | 16 cm  | 10 cm",
        "10 cm stretches to 15 cm, recovers fully.                | 10 cm | 15 cm    | 10 cm"
      })
  void marks_are_read_stretched_and_relaxed(
      String text, String marked, String stretched, String relaxed) {
    ClothRead read = only(text);
    assertEquals(marked, read.lengths().get("marked"));
    assertEquals(stretched, read.lengths().get("stretched"));
    assertEquals(relaxed.isEmpty() ? null : relaxed, read.lengths().get("relaxed"));
    assertEquals("main around", read.role() + " " + read.direction());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "10 cm of the lining stretches to 14. | lining around",
        "Power mesh: 10 cm goes to 12.5 cm. | support around",
        "Lengthwise 10 cm stretches to 13 cm. | main along",
        "10 cm stretches to 13 up and down. | main along"
      })
  void which_cloth_and_which_way_is_read_beside_it(String text, String where) {
    ClothRead read = only(text);
    assertEquals(where, read.role() + " " + read.direction());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "The fabric goes from 10 cm to 15 cm around and 12 cm up and down.",
        "10 cm of fabric stretches to 15. Up and down it goes to 12."
      })
  void one_mark_may_be_pulled_two_ways(String text) {
    List<ClothRead> read = Reader.read(text).cloths();
    assertEquals(
        List.of("around 15 cm", "along 12 cm"),
        read.stream().map(one -> one.direction() + " " + one.lengths().get("stretched")).toList());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "10 cm of elastic stretches to 20 cm.",
        "The straps stretch from 38 cm to 41 cm.",
        "I went from 36 to 38 inches.",
        "I moved it 2 cm to the side, about 3 cm in all.",
        "The fabric has 50% stretch.",
        "I pulled 2 cm to 30 cm of the cloth.",
        "The fabric was 10 cm to the left of it."
      })
  void what_is_no_test_of_cloth_is_not_read(String text) {
    assertEquals(List.of(), Reader.read(text).cloths());
  }

  private static ClothRead only(String text) {
    List<ClothRead> read = Reader.read(text).cloths();
    assertEquals(1, read.size(), () -> text + ": " + read);
    return read.get(0);
  }
}
