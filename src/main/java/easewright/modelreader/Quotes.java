package easewright.modelreader;

import java.util.Optional;

/**
 * Finds where a post says what a model quotes. Words count, in order and whole; how much white
 * space stands between them does not, since models put line breaks in order.
 */
final class Quotes {
  private final String post;

  /** Each run of white space is one space. */
  private final String plain;

  /** The place in the post of each character of {@link #plain}. */
  private final int[] places;

  /** Where a quoted passage stands in the post. */
  record Place(int from, int to) {}

  Quotes(String post) {
    this.post = post;
    this.places = new int[post.length()];
    StringBuilder kept = new StringBuilder(post.length());
    for (int i = 0; i < post.length(); i++) {
      boolean space = Character.isWhitespace(post.charAt(i));
      if (!space || kept.length() > 0 && kept.charAt(kept.length() - 1) != ' ') {
        places[kept.length()] = i;
        kept.append(space ? ' ' : post.charAt(i));
      }
    }
    this.plain = kept.toString();
  }

  /** Where the passage first stands as whole words; a passage without a letter or digit nowhere. */
  Optional<Place> find(String quoted) {
    String wanted = new Quotes(quoted.strip()).plain;
    if (wanted.chars().noneMatch(Character::isLetterOrDigit)) {
      return Optional.empty();
    }
    for (int at = plain.indexOf(wanted); at >= 0; at = plain.indexOf(wanted, at + 1)) {
      int from = places[at];
      int to = places[at + wanted.length() - 1] + 1;
      if (isBorder(from) && isBorder(to)) {
        return Optional.of(new Place(from, to));
      }
    }
    return Optional.empty();
  }

  /** Whether no word is cut in two here. */
  private boolean isBorder(int at) {
    return at == 0
        || at == post.length()
        || !Character.isLetterOrDigit(post.charAt(at - 1))
        || !Character.isLetterOrDigit(post.charAt(at));
  }
}
