package easewright.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.answering.RoundReader;
import easewright.clinic.ClinicStore;
import easewright.fuzz.Endpoints.Endpoint;
import easewright.fuzz.RawRequest.Answer;
import io.restassured.RestAssured;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Whatever is sent to whichever endpoint is answered or refused in good order: no failure of ours,
 * problems that name a remedy and tell nothing of what is inside (RFC 9457; OWASP Error Handling
 * Cheat Sheet), pages in which texts stay texts, and a log that repeats nothing. Run for each
 * engine of the store, since they differ in what they take for text.
 *
 * <p>Repeatable by its seed. {@code -Deasewright.fuzz.tries=} says how many requests each endpoint
 * gets, {@code -Deasewright.fuzz.seed=} draws others.
 */
abstract class EndpointsFuzz extends SilentLog {
  private static final int TRIES = Integer.getInteger("easewright.fuzz.tries", 12);
  private static final long SEED = Long.getLong("easewright.fuzz.seed", 20260311);

  /** Each opens a clinic of forty cases, whatever is sent. */
  private static final Set<String> DEAR = Set.of("/v1/clinics/samples", "/desk/clinics/new/sample");

  private static final List<String> OTHER_METHODS =
      List.of("GET", "HEAD", "POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "ZQ9");

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final List<String> PARAMETERS = Endpoints.queryParameters();

  @Inject ClinicStore store;
  @Inject RoundReader fittings;
  private KeptClinic clinic;

  static Set<Endpoint> endpoints() {
    return Endpoints.all();
  }

  @BeforeEach
  void stock() {
    clinic = KeptClinic.in(store, fittings);
  }

  /** So that what is spoilt next gets as far as a good request would. */
  @ParameterizedTest
  @MethodSource("endpoints")
  void a_good_request_to_an_endpoint_is_answered(Endpoint endpoint) {
    RawRequest request = new Seeds(clinic).request(endpoint);
    Answer answer = request.send(RestAssured.port);
    assertTrue(
        answer.status() >= 200 && answer.status() < 400,
        () -> request + "\n" + answer.status() + " " + answer.body());
  }

  @ParameterizedTest
  @MethodSource("endpoints")
  void whatever_is_sent_to_an_endpoint_is_answered_or_refused_in_good_order(Endpoint endpoint)
      throws IOException {
    Hostile hostile = new Hostile(new Random(SEED + endpoint.toString().hashCode()));
    Set<String> problems = kinds();
    int tries = DEAR.contains(endpoint.path()) ? 2 : TRIES;
    for (int i = 0; i < tries; i++) {
      if (!clinic.isWhole()) {
        clinic = KeptClinic.in(store, fittings);
      }
      RawRequest request = spoilt(endpoint, hostile);
      look(request, request.send(RestAssured.port), problems);
    }
    assertNothingWasLogged();
  }

  private RawRequest spoilt(Endpoint endpoint, Hostile hostile) {
    Seeds seeds = new Seeds(clinic);
    String path = endpoint.path();
    for (Map.Entry<String, String> name : clinic.names(path).entrySet()) {
      String parameter = "{" + name.getKey() + "}";
      path = path.replace(parameter, hostile.now(8) ? hostile.segment() : name.getValue());
    }
    Map<String, String> headers = seeds.headers(endpoint);
    if (hostile.now(3)) {
      hostile.spoil(headers);
    }
    JsonNode good = seeds.body(endpoint);
    byte[] body =
        endpoint.isForm()
            ? hostile.form(seeds.form(endpoint))
            : good.isMissingNode() ? null : hostile.json(good);
    if (hostile.now(12)) {
      body = hostile.bytesChanged(hostile.text().getBytes(UTF_8));
    }
    return new RawRequest(
        hostile.now(20) ? hostile.one(OTHER_METHODS) : endpoint.method(),
        path + (hostile.now(3) ? hostile.query(PARAMETERS) : ""),
        headers,
        body);
  }

  private static void look(RawRequest request, Answer answer, Set<String> problems)
      throws JsonProcessingException {
    String told = request + "\n" + answer.status() + " " + answer.headers() + "\n" + answer.body();
    GoodOrder.look(request, answer);
    String form = answer.header("content-type");
    if (form.startsWith("text/html") || form.startsWith("image/svg")) {
      for (String script : Hostile.UNESCAPED) {
        assertFalse(answer.body().contains(script), told);
      }
    }
    if (answer.status() >= 400 && !request.method().equals("HEAD")) {
      GoodOrder.lookAtRefusal(answer.body(), told);
      if (isNoAddress(request.target())) {
        assertEquals("", answer.body(), told);
      } else if (!new Endpoint(request.method(), request.target().split("[?;%]")[0]).isOfDesk()) {
        assertEquals("application/problem+json", form, told);
        lookAtProblem(answer, problems, told);
      }
    }
  }

  /** The server refuses what is no URI (RFC 3986) before anything of ours, and without a word. */
  private static boolean isNoAddress(String target) {
    try {
      new URI(target);
      return false;
    } catch (URISyntaxException none) {
      return true;
    }
  }

  private static void lookAtProblem(Answer answer, Set<String> problems, String told)
      throws JsonProcessingException {
    JsonNode problem = JSON.readTree(answer.body());
    assertEquals(answer.status(), problem.path("status").intValue(), told);
    assertTrue(problems.contains(problem.path("type").asText()), told);
    assertFalse(problem.path("detail").asText().isBlank(), told);
    for (JsonNode fault : problem.path("faults")) {
      assertFalse(fault.path("problem").asText().isBlank(), told);
      assertFalse(fault.path("remedy").asText().isBlank(), told);
    }
  }

  /** The kinds of problem that have a page with a remedy. */
  private static Set<String> kinds() throws IOException {
    Set<String> kinds = new TreeSet<>();
    for (JsonNode kind :
        new YAMLMapper()
            .readTree(Files.readString(Path.of("src/main/resources/easewright/problems.yaml")))) {
      if (!kind.path("remedy").isEmpty()) {
        kinds.add("/problems/" + kind.path("kind").asText());
      }
    }
    return kinds;
  }
}
