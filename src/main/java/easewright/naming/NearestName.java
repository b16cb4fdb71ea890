package easewright.naming;

import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.apache.commons.text.similarity.DamerauLevenshteinDistance;

/** Finds the known name most likely meant, if one is close enough to suggest. */
public final class NearestName {
  /** Longer than any name; comparing more would only cost time. */
  private static final int LONGEST = 60;

  /** What is farther away is not suggested; 0 is the same, 1 has nothing in common. */
  private static final double FARTHEST = 0.5;

  /** Letters of the shortest word that may hold a slip of the pen: "in" is not "on". */
  private static final int LEAST_FOR_A_SLIP = 3;

  /** Edits: insert, delete, replace, or swap adjacent letters. */
  private static final DamerauLevenshteinDistance EDITS = new DamerauLevenshteinDistance();

  private NearestName() {}

  /**
   * The known name most likely meant: of those close enough to suggest, the one that shares most
   * words with the text, then the one fewest letters away; empty if none is close enough.
   */
  public static Optional<String> to(String written, Collection<String> known) {
    if (written.length() > LONGEST) {
      return Optional.empty();
    }
    String plain = plain(written);
    return known.stream()
        .map(name -> new Near(name, shared(plain, plain(name)), distance(plain, plain(name))))
        .filter(near -> near.distance() <= FARTHEST)
        .min(
            Comparator.comparing(Near::shared, Comparator.reverseOrder())
                .thenComparing(Near::distance))
        .map(Near::name);
  }

  /**
   * A known name.
   *
   * @param shared how many words of the text it has
   */
  private record Near(String name, long shared, double distance) {}

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
    int words = words(one).size();
    int fewer = Math.min(words, words(two).size());
    int more = Math.max(words, words(two).size());
    // All words of the shorter within the longer: "rides-up" in "band-rides-up-at-the-back".
    long shared = words <= words(two).size() ? shared(one, two) : shared(two, one);
    double byWords = shared == fewer && fewer >= 2 ? 0.3 + 0.1 * (1 - fewer / (double) more) : 1;
    return Math.min(letters, byWords);
  }

  /** How many words of one are words of the other, a slip of the pen allowed. */
  private static long shared(String one, String other) {
    return words(one).stream().filter(word -> words(other).stream().anyMatch(isSame(word))).count();
  }

  private static Predicate<String> isSame(String word) {
    return other ->
        word.equals(other)
            || Math.max(word.length(), other.length()) >= LEAST_FOR_A_SLIP
                && EDITS.apply(word, other) <= 1;
  }

  private static Set<String> words(String name) {
    return new HashSet<>(Arrays.asList(name.split("-")));
  }
}
