package easewright.clinic;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * What became of a case's rounds, from what was told of each and from what later posts say: the
 * changes tried before a fitting, and what they did, tell of the round before it. What the first
 * fitting says of changes stands for one try made before the case was opened.
 */
final class Progress {
  private Progress() {}

  /**
   * A round as far as it tells of progress: its fitting, and what was told of its outcome or null.
   */
  record Try(JsonNode request, Outcome outcome) {}

  /** How many of the newest tries with a known outcome brought no progress. */
  static int triesWithout(List<Try> rounds) {
    List<Outcome> known = new ArrayList<>();
    Set<JsonNode> toldBefore = new HashSet<>();
    Outcome told = null;
    for (Try round : rounds) {
      Outcome said = said(round, toldBefore);
      add(known, told == null ? said : told);
      told = round.outcome();
    }
    add(known, told);
    return Outcome.withoutProgress(known);
  }

  private static void add(List<Outcome> known, Outcome outcome) {
    if (outcome != null) {
      known.add(outcome);
    }
  }

  /**
   * What a fitting says of the changes before it; one that helped is progress whatever the others
   * did. A conversation sends along what it told before: that is not told again.
   */
  private static Outcome said(Try round, Set<JsonNode> toldBefore) {
    Outcome best = null;
    for (JsonNode change : round.request().path("earlier")) {
      if (toldBefore.add(change) && change.has("outcome")) {
        Outcome outcome =
            Outcome.valueOf(change.path("outcome").textValue().toUpperCase(Locale.ROOT));
        best = best == null || outcome.compareTo(best) < 0 ? outcome : best;
      }
    }
    return best;
  }
}
