package easewright.diagnosis.inference;

import java.util.Locale;

/**
 * The words in which a rule says how often a cause shows a sign, most often first. Their
 * probabilities are parameters of the rule book, not of this package.
 */
public enum Frequency {
  NEARLY_ALWAYS,
  USUALLY,
  OFTEN,
  SOMETIMES,
  RARELY;

  /** The word as rules and parameters spell it, for instance {@code nearly-always}. */
  public String id() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
