package easewright.naming;

import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.text.similarity.DamerauLevenshteinDistance;

/** Finds the known name most likely meant, if one is close enough to suggest. */
public final class NearestName {
  /** Longer than any name; comparing more would only cost time. */
  private static final int LONGEST = 60;

  /** Edits: insert, delete, replace, or swap adjacent letters. */
  private static final DamerauLevenshteinDistance EDITS = new DamerauLevenshteinDistance();

  private NearestName() {}

  /** The known name closest to the text; empty if none is close enough to suggest. */
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

  /** The remedy: the name meant, or the known names. */
  public static String remedy(String written, Collection<String> known) {
    return to(written, known)
        .map(name -> "Did you mean \"" + name + "\"?")
        .orElseGet(
            () ->
                known.isEmpty()
                    ? "Leave it out."
                    : known.size() <= 30
                        ? "Known are: " + listed(known) + "."
                        : "Look the name up in the list the service publishes.");
  }

  /** The names as a list in words. */
  public static String listed(Collection<String> names) {
    return String.join(", ", names);
  }

  /** Ignores case, spaces and dashes, which do not change the meaning. */
  private static String plain(String name) {
    return name.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", "-");
  }

  /** 0 for the same, 1 for nothing in common: the better of two views, letters and words. */
  private static double distance(String one, String two) {
    double letters =
        EDITS.apply(one, two) / (double) Math.max(1, Math.max(one.length(), two.length()));
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
}
