package easewright.mcp;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import easewright.request.RequestJson;
import io.vertx.core.buffer.Buffer;
import java.io.IOException;
import java.util.Optional;

/**
 * Scans a message before it is parsed, token by token and in a loop: whether it is one JSON text
 * (RFC 8259), how deep it is nested, and whether its numbers can be serialised again. Later parsers
 * may recurse for each level.
 */
final class MessageBounds {
  /**
   * The largest message, bytes. A fitting with a sheet of every piece, size and edge the schema
   * allows takes 48 KB as assistants write JSON, a usual one with its sheet 15 KB.
   */
  static final int MOST_BYTES = 64 * 1024;

  /** Arguments as deep as a request may be, in the parameters, in the message, in a batch. */
  private static final int DEEPEST = RequestJson.DEEPEST + 3;

  private static final JsonFactory JSON = new JsonFactory();

  private MessageBounds() {}

  /** The fault that prevents a message from being read, if any; its id is not known yet. */
  static Optional<RpcError> fault(Buffer body) {
    int depth = 0;
    int texts = 0;
    try (JsonParser parser = JSON.createParser(body.getBytes())) {
      for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
        if (depth == 0 && ++texts > 1) {
          return unreadable("After the message there is more. Send one JSON text.");
        }
        if (token.isStructStart() && ++depth > DEEPEST) {
          return beyond("The message is nested too deep. Nest at most " + DEEPEST + " deep.");
        }
        if (token.isStructEnd()) {
          depth--;
        }
        // A number beyond the range of doubles becomes infinite, which JSON cannot represent.
        if (token == JsonToken.VALUE_NUMBER_FLOAT && !Double.isFinite(parser.getDoubleValue())) {
          return beyond("A number is beyond all measure.");
        }
      }
    } catch (IOException noJson) {
      return unreadable("The message is no JSON. Check its quotes, commas and brackets.");
    }
    return texts == 0 ? unreadable("There is no message. Send a JSON object.") : Optional.empty();
  }

  private static Optional<RpcError> beyond(String message) {
    return Optional.of(RpcError.noMessage(null, message));
  }

  private static Optional<RpcError> unreadable(String message) {
    return Optional.of(RpcError.unreadable(message));
  }
}
