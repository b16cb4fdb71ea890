package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.intake.Reading.ChangeRead;
import easewright.intake.Reading.TextRead;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

// How sewers tell what they changed, and what they suspect: common practice.
class ChangeFinderTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "I shortened the straps by 1 cm and it's better. | shorten-the-straps | 1 cm | better",
        "I took 2 cm out of the band and it got worse. | take-in-the-band | 2 cm | worse",
        "I took the band in by half an inch, no difference. | take-in-the-band | 1/2 in | same",
        "I let out the band 1/2\". It didn't help. | let-out-the-band | 1/2 in | same",
        "I let the band out. That helped a lot. | let-out-the-band | | better",
        "I lowered the armhole 1 cm, much better now. | lower-the-armhole | 1 cm | better",
        "We raised the neckline an inch and a half. | raise-the-neckline | 1 1/2 in |",
        "I keep taking the straps up and it only gets worse. | shorten-the-straps | | worse",
        "The straps were long so I took them 2 cm up. | shorten-the-straps | 2 cm |",
        "I changed the needle and it still broke. | fit-a-new-stretch-needle | | same",
        "I made the straps 3/4\" longer. It was not better, it was worse. | lengthen-the-straps | 3/4 in | worse",
        "It is gone since I shortened the elastic by 3 cm. | shorten-the-band-elastic | 3 cm | better",
        "I shortened the straps and the back rides up 4 cm. | shorten-the-straps | |"
      })
  void a_change_is_read_with_its_amount_and_outcome(
      String text, String adjustment, String amount, String outcome) {
    List<ChangeRead> read = Reader.read(text).earlier();
    assertEquals(List.of(adjustment), read.stream().map(ChangeRead::adjustment).toList());
    assertEquals(amount, read.get(0).amount() == null ? null : read.get(0).amount().text());
    assertEquals(outcome, read.get(0).outcome());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Should I shorten the straps by 1 cm?",
        "I measured again in front of the mirror, 77 cm.",
        "I sewed it all with a stretch stitch and put in a new needle.",
        "I haven't shortened the straps yet.",
        "I will take 2 cm out of the band.",
        "If I took in the band, would it help?",
        "My friend says cut the band shorter.",
        "Do I let out the band?",
        "I might have raised the neckline had I known.",
        "I did not lower the armhole.",
        "The straps dig in and the band is shorter."
      })
  void what_was_not_done_is_no_change(String text) {
    assertEquals(List.of(), Reader.read(text).earlier());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "I think the straps are too long. | straps-too-long",
        "The cups are too small, I'm sure of it. | cup-too-small",
        "Is the band too tight? | band-too-short",
        "Maybe the fabric isn't stretchy enough. | too-little-stretch-around",
        "It's probably because the armholes are cut too high. | armhole-too-high",
        "My aunt swears the needle is blunt. | wrong-or-worn-needle"
      })
  void a_cause_thought_of_is_suspected(String text, String cause) {
    assertEquals(
        List.of(cause), Reader.read(text).suspected().stream().map(TextRead::value).toList());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "I don't think the straps are too long.",
        "The straps aren't too long, I'm sure.",
        "My friend says the cups are too small, but they are full.",
        "I think it is lovely and the straps are wide."
      })
  void a_cause_ruled_out_is_not_suspected(String text) {
    assertEquals(List.of(), Reader.read(text).suspected());
  }
}
