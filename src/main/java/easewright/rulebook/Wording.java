package easewright.rulebook;

import java.util.Map;

/** The rule book's sentences with their blanks filled in. */
public record Wording(Map<String, String> sentences) {

  /**
   * The sentence of a key.
   *
   * @param blanks name and value of each blank, in turn
   */
  public String say(String key, Object... blanks) {
    String sentence = sentences.get(key);
    if (sentence == null) {
      throw new RuleBookFault("wording.yaml has no sentence called " + key + ".");
    }
    return fill(sentence, blanks);
  }

  /**
   * Fills the blanks {name} of any sentence of the catalog; what has no value stays as it is.
   *
   * @param blanks name and value of each blank, in turn
   */
  public static String fill(String sentence, Object... blanks) {
    int open = sentence.indexOf('{');
    if (open < 0 || blanks.length == 0) {
      return sentence;
    }
    StringBuilder said = new StringBuilder(sentence.length() + 32);
    int done = 0;
    while (open >= 0) {
      int close = sentence.indexOf('}', open);
      int value = close < 0 ? -1 : value(sentence, open + 1, close, blanks);
      if (value >= 0) {
        said.append(sentence, done, open).append(blanks[value]);
        done = close + 1;
      }
      open = sentence.indexOf('{', Math.max(open + 1, done));
    }
    return said.append(sentence, done, sentence.length()).toString();
  }

  private static int value(String sentence, int from, int to, Object[] blanks) {
    for (int i = 0; i < blanks.length; i += 2) {
      String name = (String) blanks[i];
      if (name.length() == to - from && sentence.startsWith(name, from)) {
        return i + 1;
      }
    }
    return -1;
  }
}
