package easewright.intake;

import easewright.number.TextSpan;

/** Where stretches of a text lie among its words. */
final class Whereabouts {
  private Whereabouts() {}

  /** How many whole words stand between two stretches, whichever comes first. */
  static int wordsBetween(Post post, TextSpan one, TextSpan other) {
    int from = Math.min(one.to(), other.to());
    int to = Math.max(one.from(), other.from());
    int last = wordAt(post, to);
    int first = wordAt(post, from);
    if (post.words().isEmpty() || from >= to) {
      return 0;
    }
    boolean begun = post.words().get(first).from() < from;
    boolean whole = post.words().get(last).to() <= to && post.words().get(last).from() < to;
    return Math.max(0, last - first + 1 - (begun ? 1 : 0) - (whole ? 0 : 1));
  }

  /** The last word that begins at or before this character; 0 if none does. */
  static int wordAt(Post post, int character) {
    int low = 0;
    int high = post.words().size() - 1;
    while (low < high) {
      int middle = (low + high + 1) / 2;
      if (post.words().get(middle).from() <= character) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return Math.max(0, low);
  }

  /** The first word of the same clause; clauses end at a pause, a turn or an "and". */
  static int clauseStart(Post post, int word) {
    return post.clauseOf(word).first();
  }

  /** The last word of the same clause. */
  static int clauseEnd(Post post, int word) {
    return post.clauseOf(word).last();
  }

  /** The last word of the same sentence. */
  static int sentenceEnd(Post post, int word) {
    return post.sentenceOf(word).last();
  }

  /** Whether the sentence of this word ends in a question mark. */
  static boolean isAsked(Post post, int word) {
    int last = sentenceEnd(post, word);
    int from = post.words().get(last).to();
    int to =
        last + 1 < post.words().size() ? post.words().get(last + 1).from() : post.text().length();
    return post.text().substring(from, to).contains("?");
  }
}
