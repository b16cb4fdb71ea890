package easewright.reading;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Takes a text apart into word pieces of a BERT vocabulary (WordPiece, longest piece first), as
 * {@code Pieces} of {@code src/training/reader/text.py}. Case and accents are dropped. Immutable.
 */
final class WordPieces {
  private static final int MOST_CHARACTERS_OF_A_WORD = 100;
  private static final String INNER = "##";

  private final Map<String, Integer> ids = new HashMap<>();
  private final int unknown;
  private final int start;
  private final int end;

  /**
   * @param vocabulary one piece a line; an id is the number of its line, from 0
   * @throws IllegalArgumentException when the vocabulary lacks a special piece
   */
  WordPieces(String vocabulary) {
    String[] lines = vocabulary.split("\n");
    for (int i = 0; i < lines.length; i++) {
      ids.put(lines[i], i);
    }
    unknown = special("[UNK]");
    start = special("[CLS]");
    end = special("[SEP]");
  }

  private int special(String piece) {
    Integer id = ids.get(piece);
    if (id == null) {
      throw new IllegalArgumentException("The vocabulary lacks " + piece + ".");
    }
    return id;
  }

  /** The id that begins a sequence. */
  int start() {
    return start;
  }

  /** The id that ends a sentence. */
  int end() {
    return end;
  }

  /** The ids of a text's pieces, without start and end. */
  List<Integer> of(String text) {
    List<Integer> found = new ArrayList<>();
    StringBuilder word = new StringBuilder();
    plain(text)
        .codePoints()
        .filter(one -> Character.getType(one) != Character.NON_SPACING_MARK)
        .forEach(
            one -> {
              if (isOfWord(one)) {
                word.appendCodePoint(one);
                return;
              }
              addWord(word, found);
              if (!Sentences.isSpace(one)) {
                found.add(ids.getOrDefault(Character.toString(one), unknown));
              }
            });
    addWord(word, found);
    return found;
  }

  private static String plain(String text) {
    String straight = text.toLowerCase(Locale.ROOT).replace('’', '\'').replace('‘', '\'');
    return Normalizer.normalize(straight, Normalizer.Form.NFD);
  }

  /** Letters and numbers of any script, as Python's {@code \w} without the underscore. */
  private static boolean isOfWord(int one) {
    return Character.isLetterOrDigit(one)
        || Character.getType(one) == Character.LETTER_NUMBER
        || Character.getType(one) == Character.OTHER_NUMBER;
  }

  private void addWord(StringBuilder word, List<Integer> found) {
    if (word.length() > 0) {
      found.addAll(piecesOf(word.toString()));
      word.setLength(0);
    }
  }

  private List<Integer> piecesOf(String word) {
    List<Integer> pieces = new ArrayList<>();
    boolean tooLong = word.codePointCount(0, word.length()) > MOST_CHARACTERS_OF_A_WORD;
    for (int at = 0; at < word.length() && !tooLong; ) {
      int to = word.length();
      Integer id = null;
      while (id == null && to > at) {
        id = ids.get((at > 0 ? INNER : "") + word.substring(at, to--));
      }
      if (id == null) {
        return List.of(unknown);
      }
      pieces.add(id);
      at = to + 1;
    }
    return tooLong ? List.of(unknown) : pieces;
  }
}
