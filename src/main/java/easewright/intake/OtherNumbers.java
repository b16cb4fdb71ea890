package easewright.intake;

import easewright.english.Break;
import easewright.english.Word;
import easewright.number.Amount;
import easewright.number.WordLists;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Tells numbers that measure nobody: ages, dates, prices, counts, weights, shoe sizes, numbers to
 * ring, heights and what was measured elsewhere on the body.
 */
final class OtherNumbers {
  private static final int MOST_WORDS = 3;

  /** So many numbers in a row are a number to ring or an account, not girths. */
  private static final int NUMBERS_IN_A_ROW = 3;

  private static final int SHORTEST_PLURAL = 4;

  private final WordLists lists;
  private final Set<String> measured;
  private final double oldest;

  /**
   * @param measured words of the names of measurements
   */
  OtherNumbers(Lexicon lexicon, Set<String> measured) {
    this.lists = lexicon.lists();
    this.oldest = lexicon.bounds().of("oldest-wearer");
    this.measured = measured;
  }

  /** The amounts that may measure the wearer or the garment. */
  List<Amount> without(Post post, List<Amount> amounts) {
    List<Amount> kept = new ArrayList<>();
    for (int i = 0; i < amounts.size(); ) {
      int row = row(post.text(), amounts, i);
      boolean many = row >= NUMBERS_IN_A_ROW;
      for (int end = i + (many ? row : 1); i < end; i++) {
        if (!many && !isOther(amounts.get(i), post)) {
          kept.add(amounts.get(i));
        }
      }
    }
    return kept;
  }

  /** How many bare numbers stand here with nothing but a blank or a stroke between. */
  private static int row(String text, List<Amount> amounts, int from) {
    int row = 0;
    int last = -1;
    for (int i = from; i < amounts.size(); i++) {
      Amount one = amounts.get(i);
      boolean next = last < 0 || text.substring(last, one.span().from()).matches("[ -]{1,3}");
      if (one.unit() != null || one.most() != null || !next) {
        break;
      }
      row++;
      last = one.span().to();
    }
    return row;
  }

  private boolean isOther(Amount amount, Post post) {
    int first = Whereabouts.wordAt(post, amount.span().from());
    int last = Whereabouts.wordAt(post, amount.span().to() - 1);
    if (ends(post, first, "other measurements") || begins(post, last, "after a height")) {
      return true;
    }
    return amount.unit() == null
        && (isAge(amount, post, first, last)
            || isDate(amount, post, first, last)
            || ends(post, first, "before a price")
            || ends(post, first, "before another number")
            || begins(post, last, "after a price")
            || isCount(post, last));
  }

  private boolean isAge(Amount amount, Post post, int first, int last) {
    if (ends(post, first, "before an age")) {
      return true;
    }
    int before = first;
    while (before > 0
        && post.sentence()[before - 1] == post.sentence()[first]
        && lists.has("nearly", post.words().get(before - 1).plain())) {
      before--;
    }
    return amount.value() < oldest
        && endsAt(post, before, "being")
        && !begins(post, last, "measured around");
  }

  private boolean isDate(Amount amount, Post post, int first, int last) {
    int from = amount.span().from();
    boolean shortYear =
        from > 1
            && "'’".indexOf(post.text().charAt(from - 1)) >= 0
            && !Character.isLetterOrDigit(post.text().charAt(from - 2));
    return shortYear
        || ends(post, first, "before a date")
        || endsAt(post, first, "months")
        || begins(post, last, "months");
  }

  /** "34 pins": a word in the plural right after the number. */
  private boolean isCount(Post post, int last) {
    if (begins(post, last, "after a count")) {
      return true;
    }
    int next = last + 1;
    if (next >= post.words().size() || post.breaks().get(next) != Break.NONE) {
      return false;
    }
    Word word = post.words().get(next);
    return word.plain().length() >= SHORTEST_PLURAL
        && word.plain().endsWith("s")
        && !word.plain().endsWith("ss")
        && !measured.contains(word.plain())
        && !lists.has("no plurals", word.plain());
  }

  /** Whether a phrase of a list stands before a word, with a few words of no weight between. */
  private boolean ends(Post post, int word, String list) {
    int at = word;
    for (int i = 0; i <= MOST_WORDS && at > 0; i++) {
      if (endsAt(post, at, list)) {
        return true;
      }
      boolean goesOn =
          post.sentence()[at - 1] == post.sentence()[word]
              && lists.has("before its number", post.words().get(at - 1).plain());
      if (!goesOn) {
        return false;
      }
      at--;
    }
    return false;
  }

  private boolean endsAt(Post post, int word, String list) {
    StringBuilder phrase = new StringBuilder();
    for (int i = word - 1; i >= Math.max(0, word - MOST_WORDS); i--) {
      if (post.sentence()[i] != post.sentence()[word]) {
        return false;
      }
      phrase.insert(0, post.words().get(i).plain() + (phrase.isEmpty() ? "" : " "));
      if (lists.has(list, phrase.toString())) {
        return true;
      }
      if (post.breaks().get(i).compareTo(Break.PAUSE) >= 0) {
        return false;
      }
    }
    return false;
  }

  /** Whether a phrase of a list stands right after a word, in the same breath. */
  boolean begins(Post post, int word, String list) {
    StringBuilder phrase = new StringBuilder();
    for (int i = word + 1; i <= word + MOST_WORDS && i < post.words().size(); i++) {
      if (post.breaks().get(i).compareTo(Break.PAUSE) >= 0) {
        return false;
      }
      phrase.append(phrase.isEmpty() ? "" : " ").append(post.words().get(i).plain());
      if (lists.has(list, phrase.toString())) {
        return true;
      }
    }
    return false;
  }
}
