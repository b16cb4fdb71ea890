package easewright.reading;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A sentence, or a part of a very long one, and what it says of each sign. Immutable. */
public final class SentenceSaid {
  /** Probabilities of one sign: reported, denied, doubtful. */
  static final int STATES = 3;

  private final int from;
  private final int to;
  private final Map<String, Integer> places;
  private final float[] probabilities;
  private final ChangeSaid change;
  private final QuestionsSaid questions;

  /**
   * A sentence.
   *
   * @param from index of its first character in the text (UTF-16)
   * @param to index after its last character
   * @param places by sign its number among the model's
   * @param probabilities three for each sign, in the order of their numbers; not copied
   * @param change what it tells of changes; null where the model does not read them
   * @param questions what it asks
   */
  SentenceSaid(
      int from,
      int to,
      Map<String, Integer> places,
      float[] probabilities,
      ChangeSaid change,
      QuestionsSaid questions) {
    this.from = from;
    this.to = to;
    this.places = places;
    this.probabilities = probabilities;
    this.change = change;
    this.questions = questions;
  }

  /** A sentence that says something of one sign. */
  public static SentenceSaid of(int from, int to, String sign, Said said) {
    return new SentenceSaid(
        from,
        to,
        Map.of(sign, 0),
        new float[] {(float) said.reported(), (float) said.denied(), (float) said.doubtful()},
        null,
        QuestionsSaid.NONE);
  }

  /** The same sentence, where it denies nothing. */
  SentenceSaid denyingNothing() {
    float[] rest = probabilities.clone();
    for (int i = 1; i < rest.length; i += STATES) {
      rest[i] = 0;
    }
    return new SentenceSaid(from, to, places, rest, change, questions);
  }

  /** The place of each sign among the model's. */
  static Map<String, Integer> places(List<String> signs) {
    Map<String, Integer> places = new HashMap<>();
    for (int i = 0; i < signs.size(); i++) {
      places.put(signs.get(i), i);
    }
    return Map.copyOf(places);
  }

  /** Index of its first character in the text (UTF-16). */
  public int from() {
    return from;
  }

  /** Index after its last character. */
  public int to() {
    return to;
  }

  /** What it tells of changes that were tried or made; null where the model does not read them. */
  ChangeSaid change() {
    return change;
  }

  /** What it asks; nothing where the model does not read questions. */
  public QuestionsSaid questions() {
    return questions;
  }

  /** Whether the model knows a sign. */
  public boolean knows(String sign) {
    return places.containsKey(sign);
  }

  /** What it says of a sign that the model knows. */
  public Said said(String sign) {
    int at = places.get(sign) * STATES;
    return new Said(probabilities[at], probabilities[at + 1], probabilities[at + 2]);
  }
}
