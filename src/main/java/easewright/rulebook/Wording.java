package easewright.rulebook;

import easewright.wording.Blanks;
import java.util.Map;

/**
 * The rule book's sentences with their blanks filled in.
 *
 * @param sentences every sentence by its key
 * @param voices how replies are said, by language: "en"
 */
public record Wording(Map<String, String> sentences, Map<String, Voice> voices) {

  /** The sentence of a key. */
  public String say(String key, Blanks blanks) {
    String sentence = sentences.get(key);
    if (sentence == null) {
      throw new RuleBookFault("wording.yaml has no sentence called " + key + ".");
    }
    return blanks.fill(sentence);
  }

  /**
   * The sentence of a key.
   *
   * @param blanks name and value of each blank, in turn
   */
  public String say(String key, Object... blanks) {
    return say(key, Blanks.ofPairs(blanks));
  }

  /**
   * Fills the blanks {name} of any sentence of the catalog; what has no value stays as it is.
   *
   * @param blanks name and value of each blank, in turn
   */
  public static String fill(String sentence, Object... blanks) {
    return Blanks.ofPairs(blanks).fill(sentence);
  }
}
