package easewright.naming;

import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Finds the known name somebody most likely meant, if one is near enough to ask about. */
public final class NearestName {
  /** Longer than any name; comparing more would only cost time. */
  private static final int LONGEST = 60;

  private NearestName() {}

  /** The known name nearest to what was written; empty where none is near enough to suggest. */
  public static Optional<String> to(String written, Collection<String> known) {
    if (written.length() > LONGEST) {
      return Optional.empty();
    }
    String plain = plain(written);
    String best = null;
    double bestDistance = Double.MAX_VALUE;
    for (String name : known) {
      double distance = distance(plain, plain(name));
      if (distance < bestDistance) {
        best = name;
        bestDistance = distance;
      }
    }
    return bestDistance <= 0.5 ? Optional.of(best) : Optional.empty();
  }

  /** What to write in its place: the name meant, or the names there are. */
  public static String remedy(String written, Collection<String> known) {
    return to(written, known)
        .map(name -> "Did you mean \"" + name + "\"?")
        .orElseGet(
            () ->
                known.isEmpty()
                    ? "Leave it out."
                    : known.size() <= 20
                        ? "Known are: " + listed(known) + "."
                        : "Look the name up in the list the service publishes.");
  }

  /** The names in a row. */
  public static String listed(Collection<String> names) {
    return String.join(", ", names);
  }

  /** Case, spaces and dashes are how people differ from a list, not what they mean. */
  private static String plain(String name) {
    return name.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", "-");
  }

  /** 0 for the same, 1 for nothing in common: the better of two views, letters and words. */
  private static double distance(String one, String two) {
    double letters = edits(one, two) / (double) Math.max(1, Math.max(one.length(), two.length()));
    Set<String> shared = words(one);
    shared.retainAll(words(two));
    int fewer = Math.min(words(one).size(), words(two).size());
    int more = Math.max(words(one).size(), words(two).size());
    // All words of the shorter within the longer: "rides-up" in "band-rides-up-at-the-back".
    double byWords =
        shared.size() == fewer && fewer >= 2 ? 0.3 + 0.1 * (1 - fewer / (double) more) : 1;
    return Math.min(letters, byWords);
  }

  private static Set<String> words(String name) {
    return new HashSet<>(Arrays.asList(name.split("-")));
  }

  /** Letters to add, drop, replace or swap with a neighbour (optimal string alignment). */
  private static int edits(String one, String two) {
    int[][] cost = new int[one.length() + 1][two.length() + 1];
    for (int i = 0; i <= one.length(); i++) {
      for (int j = 0; j <= two.length(); j++) {
        if (i == 0 || j == 0) {
          cost[i][j] = i + j;
          continue;
        }
        int change = one.charAt(i - 1) == two.charAt(j - 1) ? 0 : 1;
        int least = Math.min(cost[i - 1][j] + 1, cost[i][j - 1] + 1);
        least = Math.min(least, cost[i - 1][j - 1] + change);
        boolean swapped =
            i > 1
                && j > 1
                && one.charAt(i - 1) == two.charAt(j - 2)
                && one.charAt(i - 2) == two.charAt(j - 1);
        cost[i][j] = swapped ? Math.min(least, cost[i - 2][j - 2] + 1) : least;
      }
    }
    return cost[one.length()][two.length()];
  }
}
