package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

// Ways of naming sizes: common practice. Bands by inches and dress sizes are even numbers, bands by
// centimetres multiples of five (EN 13402-3 steps the underbust girth by 5 cm).
class SizesTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "I cut the 36D. | 36D",
        "cut a 34 DD, no changes. | 34DD",
        "made the 80C. | 80C",
        "I sewed a 75-B from it. | 75B",
        "Made my first one in a size M. | M",
        "I went with the large, it was on sale. | L",
        "Size XL, straight from the sheet. | XL",
        "Sewed the 2XL. | 2XL",
        "medium size, cut as drawn. | M",
        "I cut size 12. | 12",
        "Cut the UK 14DD. | 14DD",
        "I usually wear a 34B but made the 34C. | 34C",
        "I cut the 34C, not the 34B I buy in shops. | 34C",
        "I'm cutting a 36B instead of the 36C next. | 36C",
        "36C, straps slip. | 36C"
      })
  void the_size_that_was_cut_is_read(String text, String size) {
    assertEquals(size, Reader.read(text).sizeCut().value());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "I made a small change at the side.",
        "I made a large cup of tea.",
        "I cut it with a size 90 needle.",
        "I used a needle size 75/11.",
        "I always wash it at 40C.",
        "I did a long run of 18k.",
        "I sewed for 12h.",
        "I made 36 a week ago.",
        "I think I will cut the 38D.",
        "Should I make the 38D next time?",
        "It was made in the 1980s.",
        "I cut 200g of wadding."
      })
  void what_names_no_size_that_was_cut_is_not_read(String text) {
    assertNull(Reader.read(text).sizeCut());
  }
}
