package easewright.fuzz;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.fuzz.RawRequest.Answer;
import easewright.http.Examples;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Good and hostile fittings in one request, a line each: every line is answered, in its turn, as it
 * would be alone, whatever stands in the lines beside it. Repeatable by its seed, as {@link
 * EndpointsFuzz} is.
 */
@QuarkusTest
class LinesFuzzTest extends SilentLog {
  private static final int REQUESTS = Integer.getInteger("easewright.fuzz.tries", 12);
  private static final int PIECES = 25;
  private static final long SEED = Long.getLong("easewright.fuzz.seed", 20260311);
  private static final ObjectMapper JSON = new ObjectMapper();

  @Test
  void every_line_is_answered_as_it_would_be_alone() throws IOException {
    Hostile hostile = new Hostile(new Random(SEED));
    List<JsonNode> good = goodFittings();
    for (int i = 0; i < REQUESTS; i++) {
      byte[] body = lines(hostile, good);
      RawRequest request = request("application/x-ndjson", body);
      Answer answer = request.send(RestAssured.port);
      GoodOrder.look(request, answer);
      assertEquals(200, answer.status(), request::toString);
      List<String> replies = answer.body().lines().toList();
      List<byte[]> asked = asked(body);
      assertEquals(asked.size(), replies.size(), request::toString);
      for (int line = 0; line < asked.size(); line++) {
        look(asked.get(line), replies.get(line));
      }
    }
    assertNothingWasLogged();
  }

  private static void look(byte[] line, String reply) throws IOException {
    RawRequest request = request("application/json", line);
    Answer alone = request.send(RestAssured.port);
    JsonNode said = JSON.readTree(reply);
    String told = request + "\n" + alone.body() + "\n" + reply;
    if (alone.status() == 200) {
      assertEquals(JSON.readTree(alone.body()), said, told);
    } else {
      GoodOrder.lookAtRefusal(reply, told);
      ObjectNode problem = (ObjectNode) JSON.readTree(alone.body());
      assertEquals(alone.status(), said.path("status").intValue(), told);
      assertEquals(problem.path("type"), said.path("type"), told);
      if (!problem.path("faults").isEmpty()) {
        assertEquals(pointers(problem), pointers(said), told);
      }
    }
  }

  private static List<String> pointers(JsonNode problem) {
    List<String> pointers = new ArrayList<>();
    problem.path("faults").forEach(fault -> pointers.add(fault.path("pointer").asText()));
    return pointers;
  }

  private static RawRequest request(String form, byte[] body) {
    return new RawRequest(
        "POST", "/v1/fittings", Map.of("Host", "localhost", "Content-Type", form), body);
  }

  private static List<JsonNode> goodFittings() throws IOException {
    List<JsonNode> good = new ArrayList<>();
    for (Examples.Example example : Examples.all()) {
      if (example.path().equals("/v1/fittings")
          && example.form().equals("application/json")
          && example.status() == 200) {
        good.add(JSON.readTree(example.request()));
      }
    }
    return good;
  }

  /** Some twenty-five lines, of which bytes turned may make more or fewer. */
  private static byte[] lines(Hostile hostile, List<JsonNode> good) {
    ByteArrayOutputStream lines = new ByteArrayOutputStream();
    for (int piece = 0; piece < PIECES; piece++) {
      JsonNode fitting = hostile.one(good);
      lines.writeBytes(
          hostile.now(3)
              ? fitting.toString().getBytes(UTF_8)
              : hostile.now(10)
                  ? hostile.bytesChanged(hostile.text().getBytes(UTF_8))
                  : hostile.json(fitting));
      lines.writeBytes(hostile.one(List.of("\n", "\n", "\r\n", "\n \t\n\n")).getBytes(UTF_8));
    }
    return lines.toByteArray();
  }

  /** The lines that say something: ended by a line feed, and not of blanks alone (RFC 8259). */
  private static List<byte[]> asked(byte[] body) {
    List<byte[]> asked = new ArrayList<>();
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    for (byte sign : body) {
      if (sign != '\n') {
        line.write(sign);
      } else {
        boolean blank = line.toString(ISO_8859_1).matches("[ \t\r]*");
        if (!blank) {
          asked.add(line.toByteArray());
        }
        line.reset();
      }
    }
    return asked;
  }
}
