package easewright.inference;

import java.util.List;

/**
 * What asking about one unknown sign is worth. What its answers would leave is worked out when
 * asked for, since most questions that are ranked are not asked.
 */
public final class Question {
  private final Ask ask;
  private final double bits;
  private final Questions questions;

  Question(Ask ask, double bits, Questions questions) {
    this.ask = ask;
    this.bits = bits;
    this.questions = questions;
  }

  /** Id of the sign to ask about. */
  public String sign() {
    return ask.sign();
  }

  /** Expected drop of the entropy of the distribution over hypotheses, in bits. */
  public double bits() {
    return bits;
  }

  /** Bits per unit of effort, in the caller's unit. */
  public double worth() {
    return bits / ask.effort();
  }

  /** What a report of presence would leave; worked out anew each time. */
  public Outlook yes() {
    return questions.outlook(ask, true);
  }

  /** What a denial would leave; worked out anew each time. */
  public Outlook no() {
    return questions.outlook(ask, false);
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
