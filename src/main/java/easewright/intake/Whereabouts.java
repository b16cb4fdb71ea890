package easewright.intake;

/** Where stretches of a text lie among its words. */
final class Whereabouts {
  private Whereabouts() {}

  /** How many whole words stand between two stretches, whichever comes first. */
  static int wordsBetween(Post post, Span one, Span other) {
    int from = Math.min(one.to(), other.to());
    int to = Math.max(one.from(), other.from());
    return (int)
        post.words().stream().filter(word -> word.from() >= from && word.to() <= to).count();
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
    int from = word;
    while (from > 0 && post.clause()[from - 1] == post.clause()[word]) {
      from--;
    }
    return from;
  }

  /** The last word of the same clause. */
  static int clauseEnd(Post post, int word) {
    int to = word;
    while (to + 1 < post.words().size() && post.clause()[to + 1] == post.clause()[word]) {
      to++;
    }
    return to;
  }

  /** The last word of the same sentence. */
  static int sentenceEnd(Post post, int word) {
    int to = word;
    while (to + 1 < post.words().size() && post.sentence()[to + 1] == post.sentence()[word]) {
      to++;
    }
    return to;
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
