package easewright.pattern;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Line numbers in a YAML or JSON text, by JSON Pointer (RFC 6901). */
public final class SourceLines {

  private final Map<String, Integer> lines = new HashMap<>();

  private SourceLines() {}

  /**
   * Parses a text for its locations only.
   *
   * @throws IOException if the text cannot be parsed
   */
  public static SourceLines of(JsonParser parser) throws IOException {
    SourceLines source = new SourceLines();
    if (parser.nextToken() != null) {
      source.walk(parser, "");
    }
    return source;
  }

  /** The line of a value, from 1, or of the nearest enclosing value with a line. */
  public Optional<Integer> line(String pointer) {
    for (String place = pointer; ; place = place.substring(0, place.lastIndexOf('/'))) {
      if (lines.containsKey(place) || place.isEmpty()) {
        return Optional.ofNullable(lines.get(place));
      }
    }
  }

  private void walk(JsonParser parser, String pointer) throws IOException {
    note(parser, pointer);
    if (parser.currentToken() == JsonToken.START_OBJECT) {
      while (parser.nextToken() == JsonToken.FIELD_NAME) {
        String child = pointer + "/" + SheetNode.token(parser.currentName());
        note(parser, child);
        parser.nextToken();
        walk(parser, child);
      }
    } else if (parser.currentToken() == JsonToken.START_ARRAY) {
      for (int i = 0; parser.nextToken() != JsonToken.END_ARRAY; i++) {
        walk(parser, pointer + "/" + i);
      }
    }
  }

  private void note(JsonParser parser, String pointer) {
    lines.putIfAbsent(pointer, parser.currentTokenLocation().getLineNr());
  }
}
