package easewright.intake;

import easewright.english.WordGaps;
import java.util.Comparator;
import java.util.List;

/** Signs named in a text by the word that says what is the matter. */
final class SaidWhere {
  private final List<Match> inOrder;
  private final int[] heads;

  SaidWhere(List<Match> said) {
    this.inOrder = said.stream().sorted(Comparator.comparingInt(Match::head)).toList();
    this.heads = inOrder.stream().mapToInt(Match::head).toArray();
  }

  /** All of them, in the order of these words. */
  List<Match> all() {
    return inOrder;
  }

  /** Those whose word lies from one word to another, both included. */
  List<Match> from(int first, int last) {
    int begin = WordGaps.firstOf(first, heads);
    return inOrder.subList(begin, Math.max(begin, WordGaps.firstOf(last + 1, heads)));
  }
}
