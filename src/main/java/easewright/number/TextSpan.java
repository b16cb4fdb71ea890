package easewright.number;

/**
 * A stretch of a text.
 *
 * @param from index of its first character (UTF-16, as in JSON and Java texts)
 * @param to index after its last character
 */
public record TextSpan(int from, int to) {
  /** Both and all between. */
  public TextSpan with(TextSpan other) {
    return new TextSpan(Math.min(from, other.from), Math.max(to, other.to));
  }

  /** Whether the other lies wholly within. */
  public boolean covers(TextSpan other) {
    return from <= other.from && other.to <= to;
  }

  /** Whether they share a character. */
  public boolean touches(TextSpan other) {
    return from < other.to && other.from < to;
  }

  /** The words themselves. */
  public String in(String text) {
    return text.substring(from, to);
  }
}
