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
 * What was tried, told without naming a change: which change it comes to is common practice of
 * fitting, what it did is plain English. Posts of our own; the model's confidence is well above its
 * bounds in each, since its readings differ a little between machines.
 */
class TrialsByModelTest {
  private static final Intake INTAKE = new Intake(UsualBook.read());
  private static final Optional<TrainedReader> TRAINED = Optional.of(TrainedReader.shipped());

  private static String trials(String text) {
    return INTAKE.read(text, null, TRAINED).told().trials().stream()
        .map(TrialsByModelTest::inShort)
        .collect(Collectors.joining(", "));
  }

  private static String inShort(TrialRead trial) {
    String amount = trial.amount() == null ? "" : " by " + trial.amount().text();
    return trial.adjustment() + amount + " " + trial.outcome();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "let-out-the-band by 3 cm right | The band of my soft bra leaves a red line all day. I tied"
            + " a bit of ribbon between hook and eye, 3 cm long. Not a mark all day, and it stayed"
            + " level.",
        "lower-the-armhole by 12 mm right | The edge saws at me under my arm when I row. On the"
            + " toile I marked where it rubs and made three snips down from the edge, 12 mm each,"
            + " and put it back on. Forty minutes on the machine and not a bother.",
        "shorten-the-back by 20 mm right | There is a roll of cloth across my back. My sister"
            + " pinned a fold right across it, standing up 10 mm. Flat as a plate.",
        "move-the-straps-in by 2 cm right | My straps fall off. I unpicked the back ends of the"
            + " straps and pinned them 2 cm nearer the middle of my back. A whole day and they"
            + " never moved.",
      })
  void a_change_that_is_not_named_is_read_with_its_amount_and_outcome(String read, String text) {
    assertEquals(read, trials(text));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "The edge under my arm rubs. Should I snip the edge under the arm, 12 mm or so?",
        "The band leaves a red line. My aunt says to tie a ribbon between hook and eye, 3 cm long.",
        "There is a roll of cloth across my back. I could pin a fold across it tomorrow.",
      })
  void what_is_asked_advised_or_planned_is_no_trial(String text) {
    assertEquals("", trials(text));
  }

  @Test
  void words_that_tell_how_far_a_seam_was_opened_are_no_amount() {
    assertEquals(
        "ease-the-neckline by 3 cm right",
        trials(
            "The top edge of my bra cuts in and I bulge above it. I unpicked the neck elastic for"
                + " about 10 cm in the middle and let it spring. The ends came to rest 3 cm apart."
                + " The edge lay flat on my chest and the bulge was gone."));
  }
}
