package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.intake.Reading.TextRead;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

// How wearers tell what bears on comfort and safety: common practice.
class CircumstanceFinderTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "I am nursing. | nursing",
        "I'm feeding a six-week-old. | nursing",
        "I'm 20 weeks pregnant. | pregnant",
        "I had a mastectomy. | operated-recently",
        "I have implants. | implant-or-expander",
        "It is for my daughter, she is 13. | growing",
        "My 12 year old wears it. | growing",
        "I want to wear it to bed. | sleeping-in-it",
        "I wear it all day. | wearing-it-all-day",
        "I have it on from breakfast until bedtime. | wearing-it-all-day",
        "I'm allergic to latex. | latex-sensitive",
        "I don't do well with latex. | latex-sensitive",
        "I already let the straps out. | adjustable-straps-slackened-already",
        "It is for yoga. | low-impact",
        "I lift weights. | medium-impact",
        "I run twice a week. | high-impact"
      })
  void a_circumstance_is_read(String text, String id) {
    assertEquals(List.of(id), ids(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "The nurse told me to ask.",
        "I stopped nursing in March.",
        "I'm not feeding any more.",
        "When I was pregnant it was fine.",
        "I have no implants.",
        "I'm not allergic to rubber.",
        "My 13 year old machine skips.",
        "The strap is 13 cm.",
        "The hem grew in the wash.",
        "The seam runs down the side.",
        "I ran out of thread.",
        "I use a running stitch.",
        "I like to sew at night.",
        "I kept hiding the ends.",
        "It is a heavy weight jersey.",
        "I walked over to the mirror.",
        "I can operate an overlocker."
      })
  void a_like_word_is_no_circumstance(String text) {
    assertEquals(List.of(), ids(text));
  }

  @Test
  void the_hardest_use_counts() {
    assertEquals(List.of("high-impact"), ids("I do yoga, lift weights and run. I run most."));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "I had surgery four months ago. | 4",
        "8 weeks after my mastectomy. | 2",
        "I had a lumpectomy, it'll be five months on Tuesday. | 5",
        "I had surgery a year ago. | 12",
        "I had surgery a year and a half ago. | 18",
        "I had surgery half a year ago. | 6",
        "My surgery was last month. | 1",
        "I had surgery ten days ago. | 0",
        "My 6 month old baby was home when I had surgery 3 months ago. | 3"
      })
  void the_months_since_an_operation_are_whole(String text, String months) {
    assertEquals(months, Reader.read(text).monthsSinceOperation().value());
  }

  private static List<String> ids(String text) {
    return Reader.read(text).circumstances().stream().map(TextRead::value).toList();
  }
}
