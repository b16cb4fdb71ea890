package easewright.http;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The README's examples match the service. */
@QuarkusTest
class ReadmeTest {
  private static final Path EXAMPLE = Path.of("openapi/examples/first-fitting.json");

  @Test
  void the_readme_shows_the_example_fitting_and_the_answer_it_gets() throws IOException {
    String readme = Files.readString(Path.of("README.md"));
    String fitting = Files.readString(EXAMPLE).strip();
    assertTrue(readme.contains(fitting), "README.md should show " + EXAMPLE);

    String answer =
        given()
            .contentType("application/json")
            .accept("text/markdown")
            .header("Host", "localhost:8080")
            .body(fitting)
            .post("/v1/fittings")
            .asString();
    String begins = answer.substring(0, answer.indexOf("\n---")).strip();
    String shown = "> " + begins.replace("\n", "\n> ").replace("> \n", ">\n");
    assertTrue(readme.contains(shown), "README.md should show:\n" + shown);
  }
}
