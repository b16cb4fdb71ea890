package easewright.intake;

import easewright.number.Amount;
import easewright.number.AmountFinder;
import easewright.number.AmountWords;
import easewright.number.ReadingBounds;
import easewright.number.WordLists;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.util.List;

/** Reads with the words of the rule book, without compiling a rule. */
final class Reader {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Intake INTAKE = new Intake(BOOK);
  private static final AmountWords AMOUNTS =
      new AmountWords(new WordLists(BOOK.everyday().reader()), new ReadingBounds(BOOK));

  private Reader() {}

  /** Every amount of a text, in order. */
  static List<Amount> amounts(String text) {
    return AmountFinder.in(text, AMOUNTS);
  }

  /** Reads a text that is known to be about a top: its facts are what is tested. */
  static Reading read(String text) {
    Reading reading = INTAKE.read("Soft bra, the band and straps. " + text);
    if (!reading.fitQuestion()) {
      throw new AssertionError("Not taken for a question of fit: " + text);
    }
    return reading;
  }
}
