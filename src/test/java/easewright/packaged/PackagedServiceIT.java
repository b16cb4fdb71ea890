package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** What is shipped answers as what was tested. */
class PackagedServiceIT {
  private static final Path EXAMPLES = Path.of("openapi/examples");
  private static final ObjectMapper JSON = new ObjectMapper();

  @Test
  void the_jar_answers_a_fitting_as_recorded_and_logs_nothing_of_it() throws Exception {
    try (PackagedService service = PackagedService.start()) {
      HttpRequest fitting =
          HttpRequest.newBuilder(service.address().resolve("/v1/fittings"))
              .header("Content-Type", "application/json")
              .POST(BodyPublishers.ofFile(EXAMPLES.resolve("first-fitting.json")))
              .build();
      HttpResponse<String> answer =
          HttpClient.newHttpClient().send(fitting, BodyHandlers.ofString());

      assertEquals(200, answer.statusCode());
      JsonNode recorded = JSON.readTree(EXAMPLES.resolve("first-fitting.answer.json").toFile());
      assertEquals(recorded.get("causes"), JSON.readTree(answer.body()).get("causes"));
      assertFalse(service.log().contains("36 3/4"), service::log);
    }
  }
}
