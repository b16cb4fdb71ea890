package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.intake.Reading.SignRead;
import easewright.reading.TrainedReader;
import easewright.rulebook.UsualBook;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the sentence of a sign tells where only the trained model read the sign. That a length
 * belongs to what its sentence is about is plain English; cases follow posts of learners in view.
 */
class SentenceDetailsTest {
  private static final Intake INTAKE = new Intake(UsualBook.read());
  private static final Optional<TrainedReader> TRAINED = Optional.of(TrainedReader.shipped());

  private static Optional<SignRead> read(String sign, Reading reading) {
    return reading.signs().stream()
        .filter(one -> one.id().equals(sign) && one.present())
        .findFirst();
  }

  private static SignRead byModelAlone(String text, String sign) {
    assertTrue(read(sign, INTAKE.read(text)).isEmpty(), "read by the words: " + sign);
    Reading both = INTAKE.read(text, null, TRAINED);
    return read(sign, both).orElseThrow(() -> new AssertionError(both.signs().toString()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        // sign | side | amount | text
        "front-armhole-gapes | both | - | The edge of the armhole flaps at the front like an open"
            + " envelope, on both sides.",
        "front-armhole-gapes | - | 1 in | The front edge of the armhole has spare, about an inch.",
        "fullest-point-of-the-garment-too-high | - | 2 cm | The highest place of the cup is by me 2"
            + " cm over my nipple.",
        "horizontal-folds-across-the-back | - | 2 cm | On the back, over the rubber, lie three soft"
            + " waves from left to right, 2 cm of cloth.",
        "vertical-folds-in-the-back | - | 3 cm to 4 cm | Between the blades the cloth hangs in long"
            + " pleats from top to bottom, 3 to 4 cm of it.",
        "neckline-gapes | left | 8 mm | On the left the upper edge in front stands clear of my"
            + " chest by 8 mm.",
      })
  void a_sign_only_the_model_read_has_the_details_of_its_sentence(
      String sign, String side, String amount, String text) {
    SignRead one = byModelAlone(text, sign);
    assertEquals(side, one.side(), one.toString());
    assertEquals(amount, one.amount() == null ? null : one.amount().text(), one.toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "finished-seams-differ-left-and-right | 5.0 mm | I found uneven seam allowances. It is 6 mm"
            + " on the left, and about 11 on the right.",
        "horizontal-folds-across-the-back | 3 cm | There are horizontal folds across the back, a"
            + " fold 1.5 cm deep.",
        "horizontal-folds-across-the-back | 3 cm to 4 cm | There are horizontal folds across the"
            + " back, folds 1.5 to 2 cm deep.",
        "horizontal-folds-across-the-back | 4 cm | There are horizontal folds across the back, 2"
            + " cm folded, that means 4 cm of cloth.",
        "vertical-folds-in-the-back | 4 cm | The back has vertical folds, 1 cm deep, so 2 cm per"
            + " side and 4 in all.",
        "horizontal-folds-across-the-back | 2 cm | There are horizontal folds across the back. I"
            + " can clamp away 2 cm, and the straps are as they should be.",
        "band-pulled-up-in-front | 1 cm | The band is pulled up in front. Before it was 3 cm, now"
            + " it is 1 cm.",
      })
  void an_amount_is_all_that_the_catalog_asks_for(String sign, String amount, String text) {
    Reading reading = INTAKE.read(text);
    SignRead one = read(sign, reading).orElseThrow(() -> new AssertionError(reading.signs()));
    assertEquals(amount, one.amount() == null ? null : one.amount().text(), one.toString());
  }

  @Test
  void no_length_is_told_twice() {
    String text = "The upper edge in front and the back both flap about like sails, 2 cm.";
    List<SignRead> told =
        INTAKE.read(text, null, TRAINED).signs().stream()
            .filter(one -> one.amount() != null)
            .toList();
    assertTrue(told.size() <= 1, told.toString());
  }
}
