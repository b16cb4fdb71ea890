package easewright.inference;

import java.util.Objects;

/**
 * A report about one sign; a sign without a report is unknown and counts for nothing.
 *
 * @param sign id of the sign
 * @param present true if reported, false if asked and denied
 * @param trust probability, above 0.5 up to 1, that what was reported is so
 * @param leakShare factor on the sign's leak at the degree that was seen, above 0: a strong sign
 *     seldom shows with nothing wrong
 */
public record Observation(String sign, boolean present, double trust, double leakShare) {

  /** An observation at no particular degree: all of the leak counts. */
  public Observation(String sign, boolean present, double trust) {
    this(sign, present, trust, 1);
  }

  /**
   * @throws IllegalArgumentException if the trust is 0.5 or less (then the report says nothing, or
   *     the opposite) or above 1, or the share is not above 0
   */
  public Observation {
    Objects.requireNonNull(sign, "An observation needs a sign.");
    if (!(trust > 0.5 && trust <= 1)) {
      throw new IllegalArgumentException(
          "The trust in %s must be above 0.5 and at most 1, not %s.".formatted(sign, trust));
    }
    if (!(leakShare > 0)) {
      throw new IllegalArgumentException(
          "The share of the leak of %s must be above 0, not %s.".formatted(sign, leakShare));
    }
  }

  /**
   * Part of the report's likelihood that doesn't depend on the hypothesis: likelihood = fixed +
   * slope · P(sign absent | hypothesis).
   */
  double fixed() {
    return present ? trust : 1 - trust;
  }

  /** Part of the report's likelihood per unit of P(sign absent | hypothesis). */
  double slope() {
    return present ? 1 - 2 * trust : 2 * trust - 1;
  }
}
