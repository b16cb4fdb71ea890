package easewright.reading;

/**
 * A place in a text: a sentence, or a number.
 *
 * @param from index of its first character (UTF-16)
 * @param to index after its last character
 */
public record TextPlace(int from, int to) {
  /** Whether the other lies wholly within. */
  boolean covers(TextPlace other) {
    return from <= other.from && other.to <= to;
  }
}
