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
        "I'm nursing, and my ribs widened in pregnancy. | nursing",
        "Still feeding him; I went up two cups since my pregnancy. | nursing",
        "I'm breastfeeding and the baby is due a feed soon. | nursing",
        "I'm four months along with nursing. | nursing",
        "I'm weaning him now. | nursing",
        "I'm nursing my second, the first was weaned last year. | nursing",
        "I weaned my daughter and am nursing my son. | nursing",
        "After feeding the baby it gapes. | nursing",
        "Baby is weaned at night but still feeds by day. | nursing",
        "My ribs widen in pregnancy. | pregnant",
        "I want to finish before the baby is due. | pregnant",
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
        "It is empty on top after feeding two babies (youngest weaned over a year ago).",
        "It is empty on top after breastfeeding three kids.",
        "I breastfed for two years but weaned him at Christmas.",
        "After feeding two babies, the last one four years ago, it gapes.",
        "Years of breastfeeding have left it empty.",
        "I'm not feeding any more.",
        "When I was pregnant it was fine.",
        "My ribs stayed wider after my pregnancy.",
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

  /** Who nurses may expect again. */
  @Test
  void both_may_be_so() {
    assertEquals(
        List.of("nursing", "pregnant"), ids("I'm breastfeeding and 20 weeks pregnant again."));
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
