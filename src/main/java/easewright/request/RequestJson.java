package easewright.request;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.CharConversionException;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Parses bytes as JSON (RFC 8259), within limits far above any honest request. */
public final class RequestJson {
  /** The largest request, bytes. */
  public static final int MOST_BYTES = 256 * 1024;

  /** Maximum nesting depth of objects and lists. */
  public static final int DEEPEST = 20;

  private static final int LONGEST_TEXT = 4000;
  private static final int LONGEST_NUMBER = 30;
  private static final int LONGEST_NAME = 200;

  private static final ObjectMapper STRICT =
      JsonMapper.builder(
              JsonFactory.builder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxNestingDepth(DEEPEST)
                          .maxStringLength(LONGEST_TEXT)
                          .maxNumberLength(LONGEST_NUMBER)
                          .maxNameLength(LONGEST_NAME)
                          .build())
                  .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                  .build())
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private RequestJson() {}

  /**
   * Parses a request. A field that is null is left out: many generated clients write null for what
   * their caller did not set. A null in a list stays, and is a fault where it is read.
   *
   * @throws TooLarge above {@value #MOST_BYTES} bytes
   * @throws FaultyRequest naming line and column, if it is not JSON, holds a field twice or exceeds
   *     a bound
   */
  public static JsonNode parse(byte[] body) {
    return parse(body, 1);
  }

  /**
   * The same for part of a larger text.
   *
   * @param firstLine number of its first line in that text
   */
  public static JsonNode parse(byte[] body, int firstLine) {
    if (body.length > MOST_BYTES) {
      throw new TooLarge();
    }
    try {
      JsonNode json = STRICT.readTree(body);
      if (json == null || json.isMissingNode()) {
        throw FaultyRequest.unreadable(
            "", "The request is empty.", "Send a JSON object; {} is the least.");
      }
      leaveOutNulls(json);
      return json;
    } catch (StreamConstraintsException bound) {
      throw FaultyRequest.unreadable(
          "",
          "The JSON is nested too deep, or a text, name or number in it is too long"
              + at(bound, firstLine),
          "Nest at most "
              + DEEPEST
              + " deep and keep texts under "
              + LONGEST_TEXT
              + " characters.");
    } catch (JsonProcessingException unreadable) {
      // The parser's own message can quote the request and name classes: report only the location.
      boolean twice =
          unreadable.getOriginalMessage() != null
              && unreadable.getOriginalMessage().startsWith("Duplicate field");
      throw FaultyRequest.unreadable(
          "",
          (twice ? "A field is written twice in one object" : "This is not JSON")
              + at(unreadable, firstLine),
          twice
              ? "Write each field once; several measurements go into a list."
              : "Check quotes, commas and brackets near there (RFC 8259).");
    } catch (CharConversionException noText) {
      // The parser took leading zero bytes for UTF-16 or UTF-32, but these bytes are neither.
      throw FaultyRequest.unreadable(
          "", "The bytes are no text.", "Send the JSON in UTF-8 (RFC 8259, section 8.1).");
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible); // the bytes are already in an array
    }
  }

  private static void leaveOutNulls(JsonNode json) {
    if (json instanceof ObjectNode object) {
      object.removeNulls();
    }
    json.forEach(RequestJson::leaveOutNulls);
  }

  private static String at(JsonProcessingException problem, int firstLine) {
    JsonLocation place = problem.getLocation();
    return place == null
        ? "."
        : ", at line "
            + (place.getLineNr() + firstLine - 1)
            + ", column "
            + place.getColumnNr()
            + ".";
  }

  /** A request above {@value #MOST_BYTES} bytes. */
  public static final class TooLarge extends RuntimeException {
    public TooLarge() {
      super(null, null, false, false);
    }
  }
}
