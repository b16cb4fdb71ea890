package easewright.diagnosis;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.RandomDistribution;

/** Numbers drawn evenly, or normally for what varies between bodies. */
final class Draws {
  private Draws() {}

  static Arbitrary<Double> z() {
    return Arbitraries.doubles()
        .between(-3, 3)
        .ofScale(3)
        .withDistribution(RandomDistribution.gaussian(3));
  }

  static Arbitrary<Double> between(double least, double most) {
    return Arbitraries.doubles()
        .between(least, most)
        .ofScale(2)
        .withDistribution(RandomDistribution.uniform());
  }

  static Arbitrary<Integer> uniform(int below) {
    return Arbitraries.integers()
        .between(0, below - 1)
        .withDistribution(RandomDistribution.uniform());
  }

  static Arbitrary<Integer> mask(int bits) {
    return uniform(1 << bits);
  }

  static String mm(double value) {
    return Math.round(value) + " mm";
  }
}
