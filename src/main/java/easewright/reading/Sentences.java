package easewright.reading;

import java.util.ArrayList;
import java.util.List;

/** Splits a text into sentences, as {@code sentences} of {@code src/training/reader/text.py}. */
final class Sentences {
  private static final String ENDS = ".!?;…";
  private static final int NEXT_LINE = 0x85;

  private Sentences() {}

  /** The sentences of a text in order; those of a single character are left out. */
  static List<TextPlace> in(String text) {
    List<TextPlace> found = new ArrayList<>();
    int from = 0;
    for (int at = 0; at < text.length(); ) {
      int after = afterBreak(text, at);
      if (after > at) {
        add(text, from, at, found);
        from = after;
      }
      at = Math.max(after, at + 1);
    }
    add(text, from, text.length(), found);
    return found;
  }

  /** Where the break ends that begins here; here if none does. */
  private static int afterBreak(String text, int at) {
    int after = at;
    if (at > 0 && ENDS.indexOf(text.charAt(at - 1)) >= 0) {
      while (after < text.length() && isSpace(text.charAt(after))) {
        after++;
      }
    }
    while (after < text.length() && text.charAt(after) == '\n') {
      after++;
    }
    return after;
  }

  private static void add(String text, int from, int to, List<TextPlace> found) {
    TextPlace stretch = stripped(text, from, to);
    if (text.codePointCount(stretch.from(), stretch.to()) > 1) {
      found.add(stretch);
    }
  }

  /** A stretch without the spaces at its ends. */
  static TextPlace stripped(String text, int from, int to) {
    int first = from;
    int last = to;
    while (first < last && isSpace(text.charAt(first))) {
      first++;
    }
    while (last > first && isSpace(text.charAt(last - 1))) {
      last--;
    }
    return new TextPlace(first, last);
  }

  /** What Python's {@code str.isspace} takes for a space; no space lies beyond the 16-bit plane. */
  static boolean isSpace(int character) {
    return Character.isWhitespace(character)
        || Character.isSpaceChar(character)
        || character == NEXT_LINE;
  }
}
