package easewright.inference;

import java.util.List;

/**
 * What asking about one unknown sign is worth.
 *
 * @param sign id of the sign to ask about
 * @param bits expected drop of the entropy of the distribution over hypotheses, in bits
 * @param effort effort of asking, in the caller's unit
 * @param yes what a report of presence would leave
 * @param no what a denial would leave
 */
public record Question(String sign, double bits, double effort, Outlook yes, Outlook no) {

  /** Bits per unit of effort. */
  public double worth() {
    return bits / effort;
  }

  /**
   * What one answer would leave.
   *
   * @param probability of getting this answer, 0 to 1, were both answers trusted like this one
   * @param nothing probability that nothing is wrong, after this answer
   * @param causes the most probable causes after this answer, best first; empty if the answer is
   *     impossible
   */
  public record Outlook(double probability, double nothing, List<CauseProbability> causes) {}

  /**
   * A sign that may be asked about.
   *
   * @param sign id of the sign
   * @param effort effort of asking, above 0, in any unit common to all asks
   * @param trust trust a "yes" will get, as in {@link Observation}
   * @param trustInNo trust a "no" will get
   */
  public record Ask(String sign, double effort, double trust, double trustInNo) {

    /**
     * @throws IllegalArgumentException if the effort isn't positive or the trust out of range
     */
    public Ask {
      new Observation(sign, true, trust);
      new Observation(sign, false, trustInNo);
      if (!(effort > 0 && effort < Double.POSITIVE_INFINITY)) {
        throw new IllegalArgumentException(
            "The effort of asking about %s must be above 0, not %s.".formatted(sign, effort));
      }
    }

    /** An ask either answer to which is trusted alike. */
    public Ask(String sign, double effort, double trust) {
      this(sign, effort, trust, trust);
    }

    Observation answered(boolean present) {
      return new Observation(sign, present, present ? trust : trustInNo);
    }
  }
}
