package easewright.guard;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.answering.RoundReader;
import easewright.clinic.ClinicStore;
import easewright.fuzz.Endpoints;
import easewright.fuzz.Endpoints.Endpoint;
import easewright.fuzz.KeptClinic;
import easewright.fuzz.RawRequest;
import easewright.fuzz.Seeds;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.RestAssured;
import io.vertx.ext.web.Route;
import io.vertx.ext.web.Router;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Whatever is requested, and however it ends, as many slots are free afterwards as before: every
 * path in the code or the contract, library pages, unknown paths, every method (RFC 9110, section
 * 9, and an invalid one), rerouted calls, and clients that disconnect early.
 */
@Tag("long")
@QuarkusTest
@TestProfile(SlotsComeBackTest.Patient.class)
class SlotsComeBackTest {
  private static final List<String> METHODS =
      List.of("GET", "HEAD", "POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "FOO");

  /** Each request opens a clinic of forty cases, whatever is sent. */
  private static final Set<String> EXPENSIVE =
      Set.of("/v1/clinics/samples", "/desk/clinics/new/sample");

  private static final int POLLS = 1500;

  /** A service with a short timeout for incomplete requests. */
  public static class Patient implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of(
          "easewright.limit.arrival", "2S",
          "easewright.clinic.store", "target/places-store");
    }
  }

  @Inject RequestSlots slots;
  @Inject Router router;
  @Inject ClinicStore store;
  @Inject RoundReader fittings;
  private KeptClinic clinic;

  /** Free slots before any request. */
  private static List<Integer> before;

  static Set<Endpoint> endpoints() {
    return Endpoints.all();
  }

  @BeforeEach
  void stock() {
    clinic = KeptClinic.in(store, fittings);
    before = before == null ? slots.left() : before;
  }

  private void comeBackAfter(String what) throws InterruptedException {
    // Looked at once a poll: a request whose client has left may begin only after all were free.
    List<Integer> left = slots.left();
    for (int polls = 0; polls < POLLS && !left.equals(before); polls++) {
      Thread.sleep(20);
      left = slots.left();
    }
    assertEquals(before, left, "a place is lost by " + what);
  }

  private static void send(RawRequest request) {
    request.send(RestAssured.port);
  }

  /** Sends some or all bytes and disconnects without reading. */
  private static void leave(byte[] request, int sent) {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), RestAssured.port)) {
      socket.getOutputStream().write(Arrays.copyOf(request, Math.min(sent, request.length)));
    } catch (IOException hungUp) {
      throw new UncheckedIOException(hungUp);
    }
  }

  @ParameterizedTest
  @MethodSource("endpoints")
  void an_endpoint_frees_its_slot_after_any_request(Endpoint endpoint) throws Exception {
    send(new Seeds(clinic).request(endpoint));
    comeBackAfter("a good " + endpoint);
    for (String method : METHODS) {
      if (method.equals(endpoint.method())) {
        continue;
      }
      clinic = clinic.isWhole() ? clinic : KeptClinic.in(store, fittings);
      Seeds seeds = new Seeds(clinic);
      byte[] body = method.equals("GET") || method.equals("HEAD") ? null : "{}".getBytes(UTF_8);
      send(new RawRequest(method, seeds.path(endpoint), Map.of("Host", "localhost"), body));
    }
    comeBackAfter("other methods than " + endpoint);
    if (EXPENSIVE.contains(endpoint.path())) {
      return;
    }
    clinic = clinic.isWhole() ? clinic : KeptClinic.in(store, fittings);
    byte[] good = new Seeds(clinic).request(endpoint).bytes();
    int head = new String(good, ISO_8859_1).indexOf("\r\n\r\n") + 4;
    leave(good, good.length);
    leave(good, head - 3);
    leave(good, head + (good.length - head) / 2);
    comeBackAfter("leaving early from " + endpoint);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/api",
        "/api/",
        "/api/index.html",
        "/api/nothing",
        "/api/look.css",
        "/rules/find.js",
        "/desk/desk.js",
        "/desk/",
        "/nothing",
        "/nothing/at/all.html",
        "/webjars/nothing.js",
        "/favicon.ico",
        "/robots.txt",
        "//",
        "/v1//signs",
        "/v1/../rules",
        "/%2e%2e/rules",
        "/v1/signs;a=b",
        "/%",
        "*",
        "/q",
        "/q/",
        "/q/health",
        "/q/nothing",
        "/mcp",
        "/mcp/",
        "/mcp/sse",
        "/openapi.yaml",
        "/openapi.json",
        "/examples/first-fitting.json",
        "/drawings/underband.svg"
      })
  void any_other_path_frees_its_slot(String path) throws Exception {
    for (String method : METHODS) {
      Map<String, String> headers = new LinkedHashMap<>(Map.of("Host", "localhost"));
      // A stream of the assistants' protocol would stay open.
      if (!(path.startsWith("/mcp") && method.equals("GET"))) {
        send(new RawRequest(method, path, headers, null));
      }
      headers.put("Content-Type", "application/json");
      headers.put("Accept", "application/json, text/event-stream");
      byte[] body =
          new RawRequest(method, path, headers, "{\"jsonrpc\": \"2.0\"}".getBytes(UTF_8)).bytes();
      leave(body, body.length);
      leave(body, body.length - 4);
      comeBackAfter(method + " " + path);
    }
  }

  @Test
  void a_rerouted_call_takes_one_slot() throws Exception {
    Route twice = router.route("/sent-on").order(0).handler(call -> call.reroute("/v1/signs"));
    try {
      RawRequest request = new RawRequest("GET", "/sent-on", Map.of("Host", "localhost"), null);
      assertTrue(request.send(RestAssured.port).body().startsWith("["));
      leave(request.bytes(), request.bytes().length);
      comeBackAfter("being sent on");
    } finally {
      twice.remove();
    }
  }

  @Test
  void other_protocols_and_invalid_requests_free_their_slots() throws Exception {
    String upgrade =
        "GET /v1/signs HTTP/1.1\r\nHost: localhost\r\nConnection: Upgrade, HTTP2-Settings\r\n"
            + "Upgrade: h2c\r\nHTTP2-Settings: AAMAAABkAARAAAAAAAIAAAAA\r\n\r\n";
    String socket =
        "GET /desk HTTP/1.1\r\nHost: localhost\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n"
            + "Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\nSec-WebSocket-Version: 13\r\n\r\n";
    String pipelined = "GET /rules HTTP/1.1\r\nHost: localhost\r\n\r\n".repeat(8);
    for (String sent :
        List.of(
            upgrade,
            socket,
            pipelined,
            "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n",
            "CONNECT localhost:80 HTTP/1.1\r\nHost: localhost:80\r\n\r\n",
            "GET / HTTP/1.0\r\n\r\n",
            "GET /\r\n\r\n",
            "\u0000\u0001\u0002\r\n\r\n",
            "POST /v1/fittings HTTP/1.1\r\nHost: localhost\r\nExpect: 100-continue\r\n"
                + "Content-Type: application/json\r\nContent-Length: 9\r\n\r\n")) {
      leave(sent.getBytes(ISO_8859_1), sent.length());
      comeBackAfter(sent);
    }
  }
}
