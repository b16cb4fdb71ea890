package easewright.diagnosis;

import easewright.fitting.ReportedSign;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import java.util.Set;

/**
 * How marked a sign is, and so how likely it shows with nothing wrong: by its degree, and by how
 * much more of it was measured than is usual with nothing wrong.
 *
 * @param degree "slight", "clear", "strong", "unstated" or "denied"
 * @param times how many times as much was measured as counts as clear; 0 where nothing was
 */
record Marked(String degree, double times) {
  private static final String SLIGHT = "slight";
  private static final String CLEAR = "clear";
  private static final String STRONG = "strong";
  private static final String UNSTATED = "unstated";
  private static final String ASKED_ABOUT = "asked-about";
  private static final Set<String> LITTLE = Set.of(SLIGHT, UNSTATED);

  static Marked of(ReportedSign sign, RuleBookSource source) {
    if (!sign.present()) {
      return new Marked("denied", 0);
    }
    double times = measured(sign, source) / source.parameter("clear-by-measure");
    String degree =
        sign.degree() != null && !(times >= 1 && LITTLE.contains(sign.degree()))
            ? sign.degree()
            : times >= 1 ? CLEAR : UNSTATED;
    return new Marked(degree, times);
  }

  /** What was measured beyond what is usual with nothing wrong, mm; 0 where nothing tells. */
  private static double measured(ReportedSign sign, RuleBookSource source) {
    SignEntry entry = source.catalog().signs().get(sign.id());
    if (sign.amount() == null || entry.measures() == null && entry.usual() == null) {
      return 0;
    }
    double usual = entry.usual() == null ? 0 : source.parameter(entry.usual());
    return Measure.estimate(sign, entry.perSide(), 0).value() - usual;
  }

  /** Whether so much was measured that it is no chance. */
  private boolean isMeasured() {
    return times >= 1;
  }

  /** How far the report is believed: a tape shows what the eye may imagine. */
  double trust(Knowledge knowledge) {
    double trust = knowledge.parameter("trust-", degree);
    return isMeasured() ? Math.max(trust, knowledge.parameter("trust-", "measured")) : trust;
  }

  /**
   * How much of the chance that it shows with nothing wrong is left: the more was measured, the
   * less, in proportion, down to that of a strong sign.
   *
   * @param bothers whether the wearer asks what to do about it, and so finds it more than slight
   */
  double leakShare(boolean bothers, Knowledge knowledge) {
    double share = knowledge.parameter("leak-share-", degree);
    if (isMeasured()) {
      double measured = knowledge.parameter("leak-share-", CLEAR) / times;
      double least = knowledge.parameter("leak-share-", STRONG);
      return Math.min(share, Math.max(least, measured));
    }
    return bothers
        ? Math.min(share, knowledge.parameter("leak-share-", UNSTATED))
            * knowledge.parameter("leak-share-", ASKED_ABOUT)
        : share;
  }

  /**
   * Whether so much of it is no fault.
   *
   * @param withoutFault how often it shows with nothing wrong, in the catalog's words
   * @param bothers whether the wearer asks what to do about it
   */
  boolean isHarmless(String withoutFault, boolean bothers) {
    return switch (withoutFault) {
      case "often" -> !degree.equals(STRONG);
      case "sometimes" -> LITTLE.contains(degree) && !bothers;
      default -> false;
    };
  }
}
