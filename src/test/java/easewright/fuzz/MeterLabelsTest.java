package easewright.fuzz;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.mcp.Tools;
import easewright.mcp.Wire;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.RestAssured;
import io.vertx.ext.web.Route;
import io.vertx.ext.web.Router;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What a metric's labels may hold (Prometheus text format 0.0.4): the template of a route, a
 * method, a status, and our own fixed words; never what a stranger sent, since a wearer's link is a
 * secret and every new value costs memory.
 */
@Tag("long")
@QuarkusTest
@TestProfile(MeterLabelsTest.Small.class)
class MeterLabelsTest {
  private static final String LINK =
      "eww-zq9aaaaaaaaaaaaa-zq9aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa";
  private static final Pattern SAMPLE = Pattern.compile("(\\w+)\\{(.*)} \\S+");
  private static final Pattern LABEL = Pattern.compile("(\\w+)=\"((?:[^\"\\\\]|\\\\.)*)\",?");

  /** Methods with a meaning of their own (RFC 9110, section 9.3; RFC 5789), and our own word. */
  private static final Set<String> METHODS =
      Set.of(
          "GET", "HEAD", "POST", "PUT", "DELETE", "CONNECT", "OPTIONS", "TRACE", "PATCH", "other");

  private static final Set<String> OUTCOMES =
      Set.of("INFORMATIONAL", "SUCCESS", "REDIRECTION", "CLIENT_ERROR", "SERVER_ERROR", "UNKNOWN");

  /** A service that refuses soon: by places, by keys and by openings. */
  public static class Small implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of(
          "easewright.limit.at-once", "2",
          "easewright.limit.arrival", "20S",
          "easewright.limit.openings", "1 in 1H",
          "easewright.limit.wrong-keys", "4 in 1H",
          "easewright.clinic.store", "target/labels-store");
    }
  }

  @TestHTTPResource(value = "/metrics", management = true)
  URI metrics;

  @Inject Router router;

  @Test
  void labels_hold_templates_and_fixed_words_whatever_was_asked() throws Exception {
    askAsAStranger();
    double signs = count("uri=\"/v1/signs\"", "method=\"GET\"", "status=\"200\"");
    given().get("/v1/signs").then().statusCode(200);
    given().contentType("application/x-ndjson").body("{}".getBytes(UTF_8)).post("/v1/fittings");

    String told = given().get(metrics).asString();
    assertFalse(told.toLowerCase().contains("zq9"), () -> lines(told, "zq9"));
    Set<String> uris = uris();
    told.lines().forEach(line -> look(line, uris));

    assertEquals(signs + 1, count("uri=\"/v1/signs\"", "method=\"GET\"", "status=\"200\""));
    assertTrue(count("uri=\"/v1/wearer-links/{link}\"", "status=\"404\"") > 0, told);
    assertTrue(count("uri=\"/v1/fittings\"", "status=\"200\"") > 0, told);
    for (String status : List.of("400", "404", "429", "503")) {
      assertTrue(count("uri=\"other\"", "status=\"" + status + "\"") > 0, status + "\n" + told);
    }
  }

  private double count(String... labels) {
    return given()
        .get(metrics)
        .asString()
        .lines()
        .filter(line -> line.startsWith("http_server_requests_seconds_count"))
        .filter(line -> List.of(labels).stream().allMatch(line::contains))
        .mapToDouble(line -> Double.parseDouble(line.substring(line.lastIndexOf(' '))))
        .sum();
  }

  private static String lines(String told, String with) {
    return String.join(
        "\n", told.lines().filter(line -> line.toLowerCase().contains(with)).toList());
  }

  /** Whatever resources and routers have as an address, and the words for what has none. */
  private Set<String> uris() {
    Set<String> uris = new TreeSet<>(List.of("other", "root"));
    Endpoints.all().forEach(one -> uris.add(one.path()));
    router.getRoutes().stream().map(Route::getPath).filter(Objects::nonNull).forEach(uris::add);
    return uris;
  }

  private static void look(String line, Set<String> uris) {
    Matcher sample = SAMPLE.matcher(line);
    if (line.startsWith("#") || !sample.matches()) {
      return;
    }
    Map<String, String> labels = new HashMap<>();
    Matcher label = LABEL.matcher(sample.group(2));
    while (label.find()) {
      labels.put(label.group(1), label.group(2));
    }
    boolean ofRequests = sample.group(1).startsWith("http_") || sample.group(1).startsWith("mcp_");
    labels.forEach((name, value) -> look(line, name, value, uris, ofRequests));
  }

  /** What concerns no request is told by the Java machine and its libraries, of themselves. */
  private static void look(
      String line, String name, String value, Set<String> uris, boolean ofRequests) {
    boolean right =
        switch (name) {
          case "uri" -> uris.contains(value);
          case "method" -> METHODS.contains(value);
          case "status" -> value.matches("[1-5]\\d\\d|RESET|UNKNOWN");
          case "outcome" -> OUTCOMES.contains(value);
          case "url_scheme" -> value.equals("http");
          case "mcp_server" -> value.equals("<default>");
          case "tool_name" -> Tools.BY_PATH.containsValue(value) || value.equals("other");
          case "failure" -> value.matches("none|[A-Z][A-Za-z]+Exception");
          default -> !ofRequests && value.length() < 60;
        };
    assertTrue(right, () -> name + " in " + line);
  }

  private static void askAsAStranger() throws Exception {
    for (int i = 0; i < 150; i++) {
      ask("GET", "/zq9-" + i + "/" + i, "localhost");
      ask("GET", "/mcp/zq9-" + i, "localhost");
    }
    for (String path : List.of("/v1/wearer-links/" + LINK, "/desk/wearer/" + LINK)) {
      for (int i = 0; i < 6; i++) {
        ask("GET", path, "localhost"); // 404, then 429
      }
      ask("DELETE", path, "localhost");
      ask("POST", path + "/zq9", "localhost");
      try (Socket gone = begun(path)) {
        assertTrue(gone.isConnected());
      }
      ask("GET", path, "zq9 host");
      ask("GET", path, "zq9.example:99999");
      ask("GET", path + "/%zq9", "localhost");
    }
    for (int i = 0; i < 30; i++) {
      ask("ZQ9" + i, "/v1/signs", "localhost");
      ask("ZQ9" + i, "/desk/wearer/" + LINK, "localhost");
      ask("GET", "/v1/signs?zq9=" + i, "zq9-" + i + ".example");
    }
    for (int i = 0; i < 3; i++) {
      ask("POST", "/v1/clinics/samples", "localhost");
    }
    askAsAnAssistant();
    refused("GET", "/desk/wearer/" + LINK);
    refused("GET", "/v1/wearer-links/" + LINK);
    refused("ZQ9", "/v1/wearer-links/" + LINK);
    for (int i = 0; i < 200 && ask("GET", "/v1/signs", "localhost") != 200; i++) {
      Thread.sleep(20);
    }
  }

  /**
   * Asks while every slot is taken. A slot whose body is late goes to the next request, so on a
   * slow machine the slots are taken anew until the request is the one that is refused.
   */
  private static void refused(String method, String path) throws Exception {
    int status = 0;
    for (int round = 0; round < 20 && status != 503; round++) {
      try (Socket one = begun("/v1/fittings");
          Socket other = begun("/v1/fittings")) {
        assertTrue(one.isConnected() && other.isConnected());
        // Asked for again and again, a wrong link would be refused for that instead.
        for (int i = 0; i < 100 && ask("GET", "/v1/signs", "localhost") != 503; i++) {
          Thread.sleep(20);
        }
        status = ask(method, path, "localhost");
      }
    }
    assertEquals(503, status, path);
  }

  private static void askAsAnAssistant() throws IOException {
    List<String> messages = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      messages.add("tools/call\", \"params\": {\"name\": \"zq9-" + i + "\"}");
      messages.add("resources/read\", \"params\": {\"uri\": \"zq9://" + i + "\"}");
      messages.add("prompts/get\", \"params\": {\"name\": \"zq9-" + i + "\"}");
      messages.add("zq9/" + i + "\"");
    }
    messages.add("tools/call\", \"params\": {\"name\": \"answer_fitting\"}");
    messages.add("resources/read\", \"params\": {\"uri\": \"easewright://signs\"}");
    try (Wire wire = new Wire(RestAssured.port, "127.0.0.1")) {
      String session = wire.open().session();
      for (String message : messages) {
        int status =
            wire.post(session, "{\"jsonrpc\": \"2.0\", \"id\": 1, \"method\": \"" + message + "}")
                .status();
        assertEquals(200, status, message);
      }
    }
  }

  private static int ask(String method, String target, String host) {
    Map<String, String> headers = new LinkedHashMap<>();
    headers.put("Host", host);
    return new RawRequest(method, target, headers, null).send(RestAssured.port).status();
  }

  /** A request whose body does not come. */
  private static Socket begun(String path) throws IOException {
    Socket socket = new Socket("127.0.0.1", RestAssured.port);
    socket
        .getOutputStream()
        .write(
            ("POST "
                    + path
                    + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                    + "Content-Length: 100\r\n\r\n{")
                .getBytes(UTF_8));
    return socket;
  }
}
