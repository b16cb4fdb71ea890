package easewright.inference;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What is lost at full size by stopping at two faults: the same definitions (Jaakkola and Jordan
 * 1999, JAIR 10) summed over up to four faults, which is close to all of them at these priors.
 */
@Tag("long")
class TruncationTest {
  private static final int CAUSES = 70;
  private static final int SIGNS = 120;
  private static final int OBSERVED = 12;
  private static final double[] STRENGTHS = {0.95, 0.8, 0.6, 0.3, 0.1};

  private final Random random = new Random(1999);
  private final double[] priors = random.doubles(CAUSES, 0.002, 0.018).toArray();
  private final double[] leaks = random.doubles(SIGNS, 0.01, 0.06).toArray();
  private final double[][] strengths = new double[SIGNS][CAUSES];
  private List<Observation> observations;
  private int[] signs;
  private double total;
  private double[] sums;

  @Test
  void
      with_seventy_causes_of_one_percent_stopping_at_two_faults_keeps_the_first_cause_and_its_probability() {
    Network network = network();
    int rounds = 9;
    int sameFirst = 0;
    double sumOfErrors = 0;
    double worst = 0;
    for (int round = 0; round < rounds; round++) {
      observe(1 + round % 3);
      total = 0;
      sums = new double[CAUSES];
      sum(0, 4, 1, new int[0]);
      var posterior = Posterior.infer(network, observations);
      double first = 0;
      for (int c = 0; c < CAUSES; c++) {
        double error = Math.abs(sums[c] / total - posterior.probability(id(c)));
        sumOfErrors += error;
        worst = Math.max(worst, error);
        first = Math.max(first, sums[c]);
      }
      sameFirst += sums[Integer.parseInt(posterior.first().substring(1))] == first ? 1 : 0;
    }
    double mean = sumOfErrors / rounds / CAUSES;
    assertTrue(mean < 0.01, "mean error " + mean);
    assertTrue(worst < 0.1, "worst error " + worst);
    assertTrue(sameFirst >= rounds - 1, "same first cause only " + sameFirst + " times");
  }

  private Network network() {
    var builder = Network.builder();
    for (int c = 0; c < CAUSES; c++) {
      builder.cause(id(c), priors[c]);
    }
    for (int s = 0; s < SIGNS; s++) {
      builder.sign("s" + s, leaks[s]);
      for (int c : random.ints(0, CAUSES).distinct().limit(9).toArray()) {
        strengths[s][c] = STRENGTHS[random.nextInt(STRENGTHS.length)];
        builder.link(id(c), "s" + s, strengths[s][c]);
      }
    }
    return builder.build();
  }

  /** Draws faults and what they show; up to half of the observations are present signs. */
  private void observe(int faults) {
    int[] atWork = random.ints(0, CAUSES).distinct().limit(faults).toArray();
    var present = new ArrayList<Observation>();
    var absent = new ArrayList<Observation>();
    for (int s = 0; s < SIGNS; s++) {
      boolean shown = random.nextDouble() < probability(s, atWork);
      (shown ? present : absent).add(new Observation("s" + s, shown, s % 2 == 0 ? 0.98 : 0.85));
    }
    Collections.shuffle(present, random);
    Collections.shuffle(absent, random);
    observations = new ArrayList<>(present.subList(0, Math.min(OBSERVED / 2, present.size())));
    observations.addAll(absent.subList(0, OBSERVED - observations.size()));
    signs = observations.stream().mapToInt(o -> Integer.parseInt(o.sign().substring(1))).toArray();
  }

  private void sum(int from, int more, double odds, int[] atWork) {
    double weight = odds;
    for (int k = 0; k < OBSERVED; k++) {
      Observation seen = observations.get(k);
      double p = probability(signs[k], atWork);
      double asReported = seen.present() ? p : 1 - p;
      weight *= seen.trust() * asReported + (1 - seen.trust()) * (1 - asReported);
    }
    total += weight;
    for (int c : atWork) {
      sums[c] += weight;
    }
    for (int c = from; more > 0 && c < CAUSES; c++) {
      int[] with = Arrays.copyOf(atWork, atWork.length + 1);
      with[atWork.length] = c;
      sum(c + 1, more - 1, odds * priors[c] / (1 - priors[c]), with);
    }
  }

  private double probability(int sign, int[] atWork) {
    double absent = 1 - leaks[sign];
    for (int c : atWork) {
      absent *= 1 - strengths[sign][c];
    }
    return 1 - absent;
  }

  private static String id(int cause) {
    return "c" + cause;
  }
}
