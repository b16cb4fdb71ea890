package easewright.request;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.util.Optional;

/**
 * Splits bytes arriving in chunks of any size into lines ending in a line feed. Holds at most one
 * chunk and one line; a line above {@link RequestJson#MOST_BYTES} is not held.
 */
public final class RequestLines {
  /**
   * A line that is not blank.
   *
   * @param number its number among all lines, including blank ones, from 1
   * @param text its bytes without the line feed; empty if it is too long
   * @param tooLong whether it holds more than {@link RequestJson#MOST_BYTES} bytes
   */
  public record Line(int number, byte[] text, boolean tooLong) {

    /** Whether it may hold a post, which takes long to read; never false if it does. */
    public boolean mayHoldText() {
      String line = new String(text, UTF_8);
      return line.contains("text\"") || line.contains("\\u");
    }
  }

  private final ByteArrayOutputStream begun = new ByteArrayOutputStream();
  private boolean tooLong;
  private int number = 1;
  private byte[] piece = {};
  private int from;

  /** Takes the next chunk, once {@link #next} has used up the previous one. */
  public void add(byte[] next) {
    piece = next;
    from = 0;
  }

  /** The next complete line; empty until another chunk is added. Skips blank lines. */
  public Optional<Line> next() {
    while (from < piece.length) {
      int end = from;
      while (end < piece.length && piece[end] != '\n') {
        end++;
      }
      hold(end);
      if (end == piece.length) {
        from = end;
        return Optional.empty();
      }
      from = end + 1;
      Optional<Line> line = last();
      number++;
      if (line.isPresent()) {
        return line;
      }
    }
    return Optional.empty();
  }

  /** The rest after the last line feed, unless it is blank. */
  public Optional<Line> last() {
    Line line = new Line(number, begun.toByteArray(), tooLong);
    begun.reset();
    tooLong = false;
    return line.tooLong() || !blank(line.text()) ? Optional.of(line) : Optional.empty();
  }

  /** The number of the line being read. */
  public int number() {
    return number;
  }

  private void hold(int end) {
    if (tooLong || begun.size() + end - from > RequestJson.MOST_BYTES) {
      tooLong = true;
      begun.reset();
    } else {
      begun.write(piece, from, end - from);
    }
  }

  /** Whether it consists only of whitespace (RFC 8259, section 2). */
  private static boolean blank(byte[] text) {
    for (byte sign : text) {
      if (sign != ' ' && sign != '\t' && sign != '\r') {
        return false;
      }
    }
    return true;
  }
}
