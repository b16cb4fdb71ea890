package easewright.request;

import java.io.ByteArrayOutputStream;
import java.util.Optional;

/**
 * Cuts bytes that arrive in pieces of any size into lines ended by a line feed. Holds no more than
 * one piece and one line; of a line above {@link RequestJson#MOST_BYTES} nothing is held.
 */
public final class RequestLines {
  /**
   * A line that says something.
   *
   * @param number its place among all lines, blank ones too, from 1
   * @param text its bytes without the line feed; none if it is too long
   * @param tooLong whether it holds more than {@link RequestJson#MOST_BYTES} bytes
   */
  public record Line(int number, byte[] text, boolean tooLong) {}

  private final ByteArrayOutputStream begun = new ByteArrayOutputStream();
  private boolean tooLong;
  private int number = 1;
  private byte[] piece = {};
  private int from;

  /** Takes the next piece, once {@link #next} has nothing left of the one before. */
  public void add(byte[] next) {
    piece = next;
    from = 0;
  }

  /** The next whole line; none until another piece is added. Blank lines are passed over. */
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

  /** What stands after the last line feed, unless it is blank. */
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

  /** Whether it holds nothing but what RFC 8259, section 2, calls whitespace. */
  private static boolean blank(byte[] text) {
    for (byte sign : text) {
      if (sign != ' ' && sign != '\t' && sign != '\r') {
        return false;
      }
    }
    return true;
  }
}
