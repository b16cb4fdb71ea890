package easewright.number;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Settles which of two amounts a writer means: "77 cm, sorry, I meant 82 cm", "82, not 77". The
 * amount put right stands in the place of the wrong one; one taken back is left out.
 */
public final class Corrections {
  /** How many characters may lie between the wrong amount and the right one. */
  private static final int FARTHEST = 45;

  /** The same, where it is plainly said that the first was wrong. */
  private static final int FARTHEST_PLAIN = 70;

  private static final int LONGEST_NAME = 60;

  private final WordLists lists;
  private final Set<String> small = new HashSet<>();

  public Corrections(WordLists lists) {
    this.lists = lists;
    small.addAll(lists.words("beside a correction"));
    for (String phrase : lists.words("corrections")) {
      small.addAll(List.of(phrase.split(" ")));
    }
  }

  /** The amounts that are meant, in order. */
  public List<Amount> settled(String text, List<Amount> amounts) {
    List<Amount> kept = new ArrayList<>();
    Amount mended = null;
    for (int i = 0; i < amounts.size(); i++) {
      Amount wrong = mended == null ? amounts.get(i) : mended;
      Amount right = i + 1 < amounts.size() ? amounts.get(i + 1) : null;
      int from = i == 0 ? 0 : amounts.get(i - 1).span().to();
      boolean denied = mended == null && isDenied(text, from, wrong.span().from());
      mended = null;
      String between =
          right == null || right.span().from() - wrong.span().to() > FARTHEST_PLAIN
              ? null
              : plain(text.substring(wrong.span().to(), right.span().from()));
      if (between != null
          && (isPutRight(between, denied) || isToldAgain(between, text, wrong, right))) {
        mended = inPlaceOf(wrong, right);
      } else if (!denied
          && !isTakenBack(text, wrong.span().to())
          && !(between != null && isNamedAgain(between, text, wrong))) {
        kept.add(wrong);
      }
    }
    return kept;
  }

  private static Amount inPlaceOf(Amount wrong, Amount right) {
    String unit = right.unit() == null ? wrong.unit() : right.unit();
    return new Amount(right.number(), right.most(), unit, wrong.span().with(right.span()));
  }

  private boolean isDenied(String text, int from, int to) {
    String before = plain(text.substring(Math.max(from, to - FARTHEST), to));
    for (String no : lists.words("before a wrong number")) {
      int at = before.lastIndexOf(" " + no + " ");
      if (at >= 0 && onlySmall(before.substring(at + no.length() + 1))) {
        return true;
      }
    }
    return false;
  }

  private boolean isPutRight(String between, boolean denied) {
    return between.length() <= FARTHEST
            && onlySmall(between)
            && !between.isBlank()
            && (denied || holds(between, "corrections"))
        || isPlainlyPutRight(between);
  }

  /** "2 cm at the side, sorry, I meant 3 cm": what stands before such words is of the first. */
  private boolean isPlainlyPutRight(String between) {
    return lists.words("plain corrections").stream()
        .map(phrase -> between.lastIndexOf(" " + phrase + " "))
        .anyMatch(at -> at >= 0 && onlySmall(between.substring(at)));
  }

  /** "Fold 1.5 cm deep. Correction, measured with care: 1 cm deep": the same is said of both. */
  private boolean isToldAgain(String between, String text, Amount wrong, Amount right) {
    String first = between.strip().split(" ")[0];
    int to = right.span().to();
    String after = plain(text.substring(to, Math.min(text.length(), to + FARTHEST)));
    return !first.isEmpty()
        && after.startsWith(" " + first + " ")
        && !small.contains(first)
        && holds(between, "plain corrections");
  }

  /** "Bust 92, sorry, bust 94": the name said again. */
  private boolean isNamedAgain(String between, String text, Amount wrong) {
    if (between.length() > FARTHEST || !holds(between, "corrections")) {
      return false;
    }
    StringBuilder name = new StringBuilder(" ");
    for (String word : between.strip().split(" ")) {
      name.append(small.contains(word) ? "" : word + " ");
    }
    int from = wrong.span().from();
    String before = plain(text.substring(Math.max(0, from - LONGEST_NAME), from));
    return name.length() > 1 && before.contains(name);
  }

  private boolean isTakenBack(String text, int from) {
    String after = plain(text.substring(from, Math.min(text.length(), from + FARTHEST)));
    return lists.words("taken back").stream()
        .anyMatch(
            phrase -> {
              int at = after.indexOf(" " + phrase + " ");
              return at >= 0 && onlySmall(after.substring(0, at + 1));
            });
  }

  private boolean holds(String words, String list) {
    return lists.words(list).stream().anyMatch(phrase -> words.contains(" " + phrase + " "));
  }

  private boolean onlySmall(String words) {
    return words.isBlank() || small.containsAll(List.of(words.strip().split(" ")));
  }

  /** Words in lower case with one blank before, between and after them. */
  private static String plain(String text) {
    StringBuilder plain = new StringBuilder(" ");
    for (char c : text.toLowerCase(Locale.ROOT).replace('’', '\'').toCharArray()) {
      boolean letter = Character.isLetterOrDigit(c) || c == '\'';
      if (letter) {
        plain.append(c);
      } else if (plain.charAt(plain.length() - 1) != ' ') {
        plain.append(' ');
      }
    }
    return plain.charAt(plain.length() - 1) == ' ' ? plain.toString() : plain + " ";
  }
}
