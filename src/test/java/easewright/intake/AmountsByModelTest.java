package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.intake.Told.TrialRead;
import easewright.reading.TrainedReader;
import easewright.rulebook.UsualBook;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Which change a length is the amount of, and how it counts: a fold has two layers, and what is
 * pinned at both side seams counts twice (plain arithmetic; that a change is counted so is common
 * practice of fitting). Posts of our own; the model is well above its bounds in each.
 */
class AmountsByModelTest {
  private static final Intake INTAKE = new Intake(UsualBook.read());
  private static final Optional<TrainedReader> TRAINED = Optional.of(TrainedReader.shipped());

  private static String amounts(String text) {
    return INTAKE.read(text, null, TRAINED).told().trials().stream()
        .map(AmountsByModelTest::inShort)
        .collect(Collectors.joining(", "));
  }

  private static String inShort(TrialRead trial) {
    String amount = trial.amount() == null ? "" : " " + trial.amount().text();
    return trial.adjustment() + amount + (trial.outcome() == null ? "" : " " + trial.outcome());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "take-in-the-band 4 cm | The back of my bra climbs all day. My sister pegged"
            + " the band at both side seams and it stayed level while I danced. Measured after,"
            + " each peg stood out 1 cm from the body.",
        "shorten-the-straps 3 cm right | Both straps fall off my shoulders. My friend made a tuck"
            + " in each of them on top of the shoulder and they stayed up the whole of Sunday."
            + " Marked with a pen and opened, each tuck is 3 cm of strap.",
        "lower-the-armhole 12 mm | The armhole sits right up in my armpit and rubs. I drew round"
            + " with chalk where I would like it to stop, 12 mm lower at the bottom of the curve.",
      })
  void a_length_far_from_what_was_done_is_read_with_how_it_counts(String read, String text) {
    assertEquals(read, amounts(text));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ease-the-edge-back-to-its-draft 40 mm | The neckline of my top came out wavy like"
            + " lettuce. I pulled on it while sewing. The paper says the neck edge is 52 cm and"
            + " mine is now 56.",
        "widen-the-back 30 mm | It pulls across my back when I reach forward. Across my back I"
            + " measure 41 cm from arm to arm. The same place on the top is 38.",
      })
  void what_lies_between_two_lengths_is_the_amount(String read, String text) {
    assertEquals(read, amounts(text));
  }

  @Test
  void a_tuck_in_one_strap_on_the_lower_shoulder_is_for_that_shoulder() {
    assertEquals(
        "fit-each-shoulder 15 mm right",
        amounts(
            "My right shoulder hangs lower since an accident. The right strap falls off and the"
                + " left one stays. I pinned the right strap 15 mm shorter than the left and it"
                + " stayed up the whole day."));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "The band rolls. The elastic is 25 mm wide and I am 34 years old, bust 94 cm.",
        "The straps fall off. I ran 10 km in it and the seam allowance is 6 mm.",
        "The edge under my arm rubs. Should I snip the edge under the arm, 12 mm or so?",
      })
  void other_lengths_give_the_amount_of_nothing(String text) {
    assertEquals("", amounts(text));
  }
}
