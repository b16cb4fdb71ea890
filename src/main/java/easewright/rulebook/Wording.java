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

  /** Fills the blanks {name} of any sentence of the catalog. */
  public static String fill(String sentence, Object... blanks) {
    String said = sentence;
    for (int i = 0; i < blanks.length; i += 2) {
      said = said.replace("{" + blanks[i] + "}", String.valueOf(blanks[i + 1]));
    }
    return said;
  }
}
