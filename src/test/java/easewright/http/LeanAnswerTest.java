package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
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
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Answers are lean unless all of them is asked for: small, and nothing that the full one lacks. */
@QuarkusTest
class LeanAnswerTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String PATH = "/v1/fittings";

  /** 4 KB for a typical fitting; more only with four girths and a chain of earlier changes. */
  private static final int MOST_BYTES = 4096;

  private static final int MOST_BYTES_OF_ANY = 5 * 1024;

  /** Of any check before cutting: a plan of a whole garment names every piece and its marks. */
  private static final Map<String, Integer> MOST_BYTES_OF_A_CHECK =
      Map.of(
          "/v1/size-checks", 4096,
          "/v1/cloth-checks", 4096,
          "/v1/cut-plans", 10 * 1024);

  static List<Example> fittings() {
    return answered(PATH::equals);
  }

  static List<Example> checks() {
    return answered(MOST_BYTES_OF_A_CHECK::containsKey);
  }

  static List<Example> all() {
    return Stream.concat(fittings().stream(), checks().stream()).toList();
  }

  private static List<Example> answered(Predicate<String> path) {
    return Examples.all().stream()
        .filter(one -> path.test(one.path()) && one.status() == 200)
        .toList();
  }

  @Test
  void a_typical_answer_has_at_most_four_kilobytes() throws IOException {
    List<Integer> sizes = new ArrayList<>();
    for (Example example : fittings()) {
      sizes.add(bytes(example, "").length);
    }
    sizes.sort(null);
    assertTrue(sizes.get(sizes.size() / 2) <= MOST_BYTES, sizes::toString);
    assertTrue(sizes.get(sizes.size() - 1) <= MOST_BYTES_OF_ANY, sizes::toString);
  }

  @Test
  void every_check_has_an_example_here() {
    assertEquals(
        MOST_BYTES_OF_A_CHECK.keySet(),
        checks().stream().map(Example::path).collect(Collectors.toSet()));
  }

  @ParameterizedTest
  @MethodSource("checks")
  void a_check_is_answered_in_few_bytes(Example example) throws IOException {
    int lean = bytes(example, "").length;
    assertTrue(lean <= MOST_BYTES_OF_A_CHECK.get(example.path()), example.name() + " " + lean);
  }

  @ParameterizedTest
  @MethodSource("all")
  void a_lean_answer_is_a_part_of_the_full_one(Example example) throws IOException {
    List<String> others = new ArrayList<>();
    JsonNode full = JSON.readTree(bytes(example, "?detail=full"));
    byte[] lean = bytes(example, "?detail=lean");
    compare(JSON.readTree(lean), full, "", others);
    assertEquals(List.of(), others);
    assertArrayEquals(lean, bytes(example, ""));
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
      byte[] alone = bytes(PATH, line, query);
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
  @CsvSource({
    PATH + ", application/json",
    PATH + ", " + BulkRoute.FORM,
    "/v1/size-checks, application/json",
    "/v1/cloth-checks, application/json",
    "/v1/cut-plans, application/json"
  })
  void another_detail_is_refused_with_what_may_be_written(String path, String form) {
    given()
        .contentType(form)
        .body("{}\n".getBytes(StandardCharsets.UTF_8))
        .post(path + "?detail=everything")
        .then()
        .statusCode(400)
        .contentType("application/problem+json")
        .body("detail", containsString("Write detail=lean or detail=full"));
  }

  private static byte[] bytes(Example example, String query) throws IOException {
    return bytes(example.path(), example.request(), query);
  }

  private static byte[] bytes(String path, String request, String query) {
    return given()
        .contentType("application/json")
        .body(request)
        .post(path + query)
        .then()
        .statusCode(200)
        .extract()
        .asByteArray();
  }
}
