package easewright.book;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CauseNote;
import java.util.List;
import java.util.Locale;

/** How often the answers of many simulated fittings were right, and how well they knew it. */
final class Tally {
  private static final int BINS = 10;

  private final int[] stated = new int[BINS];
  private final int[] observed = new int[BINS];
  private final double[] sum = new double[BINS];
  private int fittings;
  private int faulty;
  private int first;
  private int firstThree;
  private int everyCauseInFirstThree;
  private int faultless;
  private int faultlessSeen;
  private double brier;
  private int statements;
  private int truths;

  void add(List<String> atWork, Answer answer) {
    fittings++;
    List<String> causes = Consulting.causes(answer);
    List<String> leading = causes.stream().limit(3).toList();
    if (atWork.isEmpty()) {
      faultless++;
      faultlessSeen += causes.isEmpty() || likelierThanAny(answer) ? 1 : 0;
    } else {
      faulty++;
      first += !causes.isEmpty() && atWork.contains(causes.get(0)) ? 1 : 0;
      firstThree += leading.stream().anyMatch(atWork::contains) ? 1 : 0;
      everyCauseInFirstThree += leading.containsAll(atWork) ? 1 : 0;
    }
    for (CauseNote cause : answer.causes()) {
      state(cause.probability(), atWork.contains(cause.id()));
    }
    state(answer.nothingWrong(), atWork.isEmpty());
  }

  private static boolean likelierThanAny(Answer answer) {
    return answer.nothingWrong() > answer.causes().get(0).probability();
  }

  private void state(double probability, boolean so) {
    int bin = Math.min(BINS - 1, (int) (probability * BINS));
    stated[bin]++;
    observed[bin] += so ? 1 : 0;
    sum[bin] += probability;
    brier += Math.pow(probability - (so ? 1 : 0), 2);
    statements++;
    truths += so ? 1 : 0;
  }

  /** Share of the faulty fittings, 0 to 1. */
  double first() {
    return (double) first / faulty;
  }

  /** Share of the faulty fittings in which a true cause is among the first three, 0 to 1. */
  double firstThree() {
    return (double) firstThree / faulty;
  }

  /** Mean squared difference of what was stated and what was so, 0 (best) to 1. */
  double brier() {
    return brier / statements;
  }

  /** The Brier score of always stating the overall share. */
  double brierOfTheOverallShare() {
    double share = (double) truths / statements;
    return share * (1 - share);
  }

  /** Mean gap of stated and observed probability, weighted by how often each bin was used. */
  double meanGap() {
    double gap = 0;
    for (int bin = 0; bin < BINS; bin++) {
      gap += Math.abs(sum[bin] - observed[bin]);
    }
    return gap / statements;
  }

  /** As {@link #meanGap}, counting only the bins in which more was claimed than was so. */
  double overstated() {
    double gap = 0;
    for (int bin = 0; bin < BINS; bin++) {
      gap += Math.max(0, sum[bin] - observed[bin]);
    }
    return gap / statements;
  }

  String text(String title) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "%n%s%n  %d fittings, %d with a fault.%n"
                + "  A true cause first: %.0f %%; among the first three: %.0f %%; all true causes"
                + " among the first three: %.0f %%.%n"
                + "  Without a fault: %d; \"nothing wrong\" likeliest in %.0f %% of these.%n"
                + "  Brier score %.3f (always stating the overall share: %.3f).%n"
                + "  stated      times  mean stated  observed%n",
            title,
            fittings,
            faulty,
            100 * first(),
            100 * firstThree(),
            100.0 * everyCauseInFirstThree / faulty,
            faultless,
            100.0 * faultlessSeen / Math.max(1, faultless),
            brier(),
            brierOfTheOverallShare()));
    for (int bin = 0; bin < BINS; bin++) {
      if (stated[bin] > 0) {
        text.append(
            String.format(
                Locale.ROOT,
                "  %3d-%3d %%  %6d  %9.0f %%  %6.0f %%%n",
                bin * 10,
                bin * 10 + 10,
                stated[bin],
                100 * sum[bin] / stated[bin],
                100.0 * observed[bin] / stated[bin]));
      }
    }
    return text.toString();
  }
}
