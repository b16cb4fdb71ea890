package easewright.intake;

import easewright.rulebook.RuleBookSource;
import java.nio.file.Path;

/** Reads with the words of the rule book, without compiling a rule. */
final class Reader {
  private static final Intake INTAKE = new Intake(RuleBookSource.read(Path.of("rules")));

  private Reader() {}

  /** Reads a text that is known to be about a top: its facts are what is tested. */
  static Reading read(String text) {
    Reading reading = INTAKE.read("Soft bra, the band and straps. " + text);
    if (!reading.fitQuestion()) {
      throw new AssertionError("Not taken for a question of fit: " + text);
    }
    return reading;
  }
}
