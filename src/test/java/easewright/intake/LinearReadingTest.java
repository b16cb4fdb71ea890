package easewright.intake;

import easewright.fuzz.LinearTime;
import easewright.rulebook.UsualBook;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Reading takes work in proportion to the words, whatever is said again and again. */
class LinearReadingTest {
  /** As long as the service takes a text, in characters. */
  private static final int LONGEST = 4000;

  private static final Intake INTAKE = new Intake(UsualBook.read());

  @ParameterizedTest
  @ValueSource(
      strings = {
        "“ rides up ",
        "rides up, ",
        "no gaping, ",
        "no no gapes ",
        "the straps are fine, ",
        "slip off ",
        "dig in ",
        "my arm is numb ",
        "used to gape ",
        "if it gapes ",
        "the waistband rides up ",
        "took in the band by 1 cm ",
        "I think the band is too short ",
        "I think cups too big ",
        "gapes - straps no longer by",
        "no longer straps ",
        "pinned the neckline 1 cm shorter lies flat ",
        "my 75C spilled the 80C gapes. ",
        "neckline is 54 cm, elastic cut 50 cm ",
        "bust 94 cm over a padded bra ",
        "at the back  no longer  İ",
        "10 cm stretches to 15 cm ",
        "bust 94 cm ",
        "not 77 cm but 82 cm ",
        "1 cm gape ",
        "80C "
      })
  void a_text_four_times_as_long_takes_four_times_the_work(String again) {
    LinearTime.check(again, LONGEST, INTAKE::read);
  }
}
