package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.http.Examples.Example;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A lean answer is small, and says nothing that the full one does not. */
@QuarkusTest
class LeanAnswerTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String PATH = "/v1/fittings";

  /** 4 KB for a typical fitting; more only with four girths and a chain of earlier changes. */
  private static final int MOST_BYTES = 4096;

  private static final int MOST_BYTES_OF_ANY = 5 * 1024;

  static List<Example> fittings() {
    return Examples.all().stream()
        .filter(one -> one.path().equals(PATH) && one.status() == 200)
        .toList();
  }

  @Test
  void a_typical_answer_has_at_most_four_kilobytes() throws IOException {
    List<Integer> sizes = new ArrayList<>();
    for (Example example : fittings()) {
      sizes.add(bytes(example.request(), "").length);
    }
    sizes.sort(null);
    assertTrue(sizes.get(sizes.size() / 2) <= MOST_BYTES, sizes::toString);
    assertTrue(sizes.get(sizes.size() - 1) <= MOST_BYTES_OF_ANY, sizes::toString);
  }

  @ParameterizedTest
  @MethodSource("fittings")
  void a_lean_answer_is_a_part_of_the_full_one(Example example) throws IOException {
    List<String> others = new ArrayList<>();
    JsonNode full = JSON.readTree(bytes(example.request(), "?detail=full"));
    compare(JSON.readTree(bytes(example.request(), "?detail=lean")), full, "", others);
    assertEquals(List.of(), others);
  }

  /** A list may end earlier, and may leave out the places that follow their main piece. */
  private static void compare(JsonNode lean, JsonNode full, String at, List<String> others) {
    for (Map.Entry<String, JsonNode> one : lean.properties()) {
      compare(one.getValue(), full.path(one.getKey()), at + "/" + one.getKey(), others);
    }
    int next = 0;
    for (JsonNode entry : lean) {
      if (lean.isArray()) {
        while (full.path(next).path("follows").booleanValue()) {
          next++;
        }
        compare(entry, full.path(next), at + "/" + next, others);
        next++;
      }
    }
    if (lean.isValueNode() && !lean.equals(full)) {
      others.add(at);
    }
  }

  @Test
  void lines_are_lean_too_unless_the_full_answer_is_asked_for() throws IOException {
    String line = JSON.readTree(fittings().get(0).request()) + "\n";
    for (String query : List.of("", "?detail=full")) {
      byte[] alone = bytes(line, query);
      byte[] answered =
          given()
              .contentType(BulkRoute.FORM)
              .body(line.getBytes(StandardCharsets.UTF_8))
              .post(PATH + query)
              .asByteArray();
      assertEquals(
          new String(alone, StandardCharsets.UTF_8) + "\n",
          new String(answered, StandardCharsets.UTF_8));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"application/json", BulkRoute.FORM})
  void another_detail_is_refused_with_what_may_be_written(String form) {
    given()
        .contentType(form)
        .body("{}\n".getBytes(StandardCharsets.UTF_8))
        .post(PATH + "?detail=everything")
        .then()
        .statusCode(400)
        .contentType("application/problem+json")
        .body("detail", containsString("Write detail=lean or detail=full"));
  }

  private static byte[] bytes(String request, String query) {
    return given()
        .contentType("application/json")
        .body(request)
        .post(PATH + query)
        .then()
        .statusCode(200)
        .extract()
        .asByteArray();
  }
}
