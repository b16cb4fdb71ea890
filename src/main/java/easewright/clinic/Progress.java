package easewright.clinic;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Outcomes of a case's rounds, from the reports on each and from later posts: the changes tried
 * before a fitting, and their effects, are the outcome of the previous round. Changes in the first
 * fitting count as one try made before the case was opened.
 */
final class Progress {
  private Progress() {}

  /** The part of a round relevant to progress: its fitting, and its reported outcome or null. */
  record Try(JsonNode request, Outcome outcome) {}

  /** The number of latest consecutive tries with a known outcome that brought no progress. */
  static int triesWithout(List<Try> rounds) {
    List<Outcome> known = new ArrayList<>();
    Set<JsonNode> reportedBefore = new HashSet<>();
    Outcome reported = null;
    for (Try round : rounds) {
      Outcome said = said(round, reportedBefore);
      add(known, reported == null ? said : reported);
      reported = round.outcome();
    }
    add(known, reported);
    return Outcome.withoutProgress(known);
  }

  private static void add(List<Outcome> known, Outcome outcome) {
    if (outcome != null) {
      known.add(outcome);
    }
  }

  /**
   * The outcome that a fitting reports for the changes before it; one that helped is progress
   * whatever the others did. A conversation resends its earlier reports, which do not count again.
   */
  private static Outcome said(Try round, Set<JsonNode> reportedBefore) {
    Outcome best = null;
    for (JsonNode change : round.request().path("earlier")) {
      if (reportedBefore.add(change) && change.has("outcome")) {
        Outcome outcome =
            Outcome.valueOf(change.path("outcome").textValue().toUpperCase(Locale.ROOT));
        best = best == null || outcome.compareTo(best) < 0 ? outcome : best;
      }
    }
    return best;
  }
}
