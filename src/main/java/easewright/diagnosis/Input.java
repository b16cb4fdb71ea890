package easewright.diagnosis;

/** A number that a formula needs; without it the formula has no result. */
interface Input {
  /** Whether a fitting has it. */
  boolean isGiven(FittingNumbers numbers);
}
