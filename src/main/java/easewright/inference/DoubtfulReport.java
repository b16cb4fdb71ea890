package easewright.inference;

import java.util.Optional;

/**
 * A report that was perhaps not meant: it counts as if it were made with that probability, and as
 * if nothing were known otherwise (Jeffrey 1965, "The Logic of Decision", chapter 11, from memory).
 */
public final class DoubtfulReport {
  private DoubtfulReport() {}

  /**
   * A report of less trust that has the effect of a report that was perhaps meant.
   *
   * @param before what is probable without it
   * @param seen the report as if it were surely meant, of a sign not observed yet
   * @param sure probability that it was meant, above 0 up to 1
   * @return empty where it has no effect
   */
  public static Optional<Observation> of(Posterior before, Observation seen, double sure) {
    if (sure == 1) {
      return Optional.of(seen);
    }
    Network network = before.network();
    int sign = network.sign(seen.sign());
    Weights shown = before.weights().copy();
    shown.multiply(seen.fixed(), seen.slope() * network.silence(sign, seen), network.misses(sign));
    double expected = shown.total(shown.marginals());
    double right = sure * seen.trust() / expected + 1 - sure;
    double wrong = sure * (1 - seen.trust()) / expected + 1 - sure;
    double trust = right / (right + wrong);
    return trust > 0.5
        ? Optional.of(new Observation(seen.sign(), seen.present(), trust, seen.leakShare()))
        : Optional.empty();
  }
}
