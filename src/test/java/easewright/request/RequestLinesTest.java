package easewright.request;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.request.RequestLines.Line;
import java.io.LineNumberReader;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class RequestLinesTest {
  private static List<Line> cut(byte[] text, int pieceSize) {
    RequestLines lines = new RequestLines();
    List<Line> found = new ArrayList<>();
    for (int from = 0; from < text.length; from += pieceSize) {
      lines.add(Arrays.copyOfRange(text, from, Math.min(text.length, from + pieceSize)));
      for (Optional<Line> line = lines.next(); line.isPresent(); line = lines.next()) {
        found.add(line.get());
      }
    }
    lines.last().ifPresent(found::add);
    return found;
  }

  @Provide
  Arbitrary<String> texts() {
    return Arbitraries.strings().withChars("ab ½\t\n").ofMaxLength(60);
  }

  /** Lines and numbers match those of the Java platform's LineNumberReader. */
  @Property
  void however_it_is_cut_a_text_has_the_same_lines(
      @ForAll("texts") String text, @ForAll @IntRange(min = 1, max = 9) int pieceSize)
      throws Exception {
    List<String> expected = new ArrayList<>();
    LineNumberReader reader = new LineNumberReader(new StringReader(text));
    for (String line = reader.readLine(); line != null; line = reader.readLine()) {
      if (!line.isBlank()) {
        expected.add(reader.getLineNumber() + ":" + line);
      }
    }
    assertEquals(
        expected,
        cut(text.getBytes(UTF_8), pieceSize).stream()
            .map(line -> line.number() + ":" + new String(line.text(), UTF_8))
            .toList());
  }

  @Test
  void of_a_line_above_256_kilobytes_nothing_is_held_and_the_next_is_whole() {
    String text = "x".repeat(256 * 1024) + "\n" + "x".repeat(256 * 1024 + 1) + "\nnext";
    List<Line> lines = cut(text.getBytes(UTF_8), 8192);
    assertEquals(List.of(false, true, false), lines.stream().map(Line::tooLong).toList());
    assertEquals(
        List.of(256 * 1024, 0, 4), lines.stream().map(line -> line.text().length).toList());
  }

  @Test
  void a_line_with_only_a_carriage_return_is_blank_but_counted() {
    List<Line> lines = cut("\r\n\r\nx\r\n".getBytes(UTF_8), 3);
    assertEquals(1, lines.size());
    assertEquals(3, lines.get(0).number());
    assertTrue(new String(lines.get(0).text(), UTF_8).startsWith("x"));
  }
}
