package easewright.diagnosis;

import easewright.diagnosis.Answer.TapeErrorNote;
import easewright.fitting.Fitting;
import easewright.measure.Measured;
import easewright.rulebook.Wording;

/** States the error of the tape that probabilities of sizes assume. */
public final class TapeErrors {
  private TapeErrors() {}

  /** The errors of the bust and, where it was measured, of the underbust. */
  public static TapeErrorNote of(Fitting fitting, Wording wording) {
    UnitFormatter shown = new UnitFormatter(fitting.units());
    Measured bust = fitting.body().bust();
    Measured under = fitting.body().underbust();
    if (under == null) {
      return new TapeErrorNote(
          Understanding.tenth(bust.sdMm()),
          null,
          wording.say("size-tape-error-bust", "bust", shown.length(bust.sdMm())));
    }
    return new TapeErrorNote(
        Understanding.tenth(bust.sdMm()),
        Understanding.tenth(under.sdMm()),
        wording.say(
            "size-tape-error",
            "bust",
            shown.length(bust.sdMm()),
            "underbust",
            shown.length(under.sdMm())));
  }
}
