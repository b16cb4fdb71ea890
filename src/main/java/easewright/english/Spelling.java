package easewright.english;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.lucene.util.BytesRef;
import org.apache.lucene.util.IntsRef;
import org.apache.lucene.util.UnicodeUtil;
import org.apache.lucene.util.automaton.Automata;
import org.apache.lucene.util.automaton.Automaton;
import org.apache.lucene.util.automaton.FiniteStringsIterator;
import org.apache.lucene.util.automaton.LevenshteinAutomata;
import org.apache.lucene.util.automaton.Operations;

/**
 * Mends misspelt words by the few letters they are off, swapped neighbours counting as one
 * (Damerau–Levenshtein automata of Schulz and Mihov 2002). Short words are never mended, nor words
 * that are good English as they stand.
 */
public final class Spelling {
  private static final int SHORTEST = 4;
  private static final int SHORTEST_FOR_TWO = 8;
  private static final int LONGEST = 20;

  private final Set<String> known;
  private final Set<String> leftAlone;
  private final Automaton vocabulary;

  /**
   * @param known words to mend towards, in lower case
   */
  public Spelling(Collection<String> known) {
    this.known = Set.copyOf(known);
    this.leftAlone = plainWords();
    List<BytesRef> sorted =
        new TreeSet<>(known)
            .stream().filter(word -> word.length() >= SHORTEST).map(BytesRef::new).toList();
    this.vocabulary = Automata.makeStringUnion(sorted);
  }

  private static Set<String> plainWords() {
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(
                Spelling.class.getResourceAsStream("/easewright/english/plain-words.txt"),
                StandardCharsets.UTF_8))) {
      return lines.lines().filter(line -> !line.startsWith("#")).collect(Collectors.toSet());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The known word this one most likely is, or nothing if it is known or too far from any. */
  public Optional<String> mended(String plain) {
    if (plain.length() < SHORTEST
        || plain.length() > LONGEST
        || known.contains(plain)
        || leftAlone.contains(plain)
        || plain.chars().anyMatch(Character::isDigit)) {
      return Optional.empty();
    }
    Optional<String> near = nearest(plain, 1);
    return near.isPresent() || plain.length() < SHORTEST_FOR_TWO ? near : nearest(plain, 2);
  }

  /** First letters are seldom mistyped, and often tell words apart: hand and band. */
  private Optional<String> nearest(String plain, int edits) {
    Automaton close =
        new LevenshteinAutomata(plain.substring(1), true).toAutomaton(edits, plain.substring(0, 1));
    FiniteStringsIterator found =
        new FiniteStringsIterator(Operations.intersection(close, vocabulary));
    String best = null;
    for (IntsRef one = found.next(); one != null; one = found.next()) {
      String word = UnicodeUtil.newString(one.ints, one.offset, one.length);
      if (plain.length() == SHORTEST && !isLettersLeftOut(plain, word)) {
        continue;
      }
      if (best == null || rank(plain, word) < rank(plain, best)) {
        best = word;
      }
    }
    return Optional.ofNullable(best);
  }

  /** Of four letters only one left out or two swapped is a slip; any other letter makes a word. */
  private static boolean isLettersLeftOut(String written, String word) {
    return word.length() > written.length() || sorted(written).equals(sorted(word));
  }

  /** Same letters in another order first, then the like length, then the alphabet. */
  private static int rank(String written, String word) {
    int letters = sorted(written).equals(sorted(word)) ? 0 : 10;
    return letters + Math.abs(written.length() - word.length());
  }

  private static String sorted(String word) {
    return word.chars()
        .sorted()
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }
}
