package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.mcp.Wire;
import easewright.mcp.Wire.Answer;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Ten thousand assistants that only open sessions, from one address and from as many, against the
 * service as it is shipped: they cost it little, and everybody else is answered as before.
 */
@Tag("long")
class ManySessionsIT {
  private static final int MANY = 10_000;
  private static final int OF_ONE_PLACE = 50;
  private static final int OF_ALL = 1000;
  private static final int MOST_MEMORY_MB = 250;
  private static final String PING = "{\"jsonrpc\": \"2.0\", \"id\": 7, \"method\": \"ping\"}";

  /** As much as a first message may be, so that it would fill the heap twice were it kept. */
  private static final String HELLO = Wire.hello("a".repeat(7 * 1024));

  @Test
  void ten_thousand_sessions_asked_for_leave_the_service_well() throws Exception {
    try (PackagedService service = PackagedService.start()) {
      int port = service.address().getPort();
      try (Wire first = new Wire(port, "127.0.0.1")) {
        String session = first.open().session();
        assertFitting(service);

        assertEquals(Map.of(200, OF_ONE_PLACE, 429, MANY - OF_ONE_PLACE), fromOne(port));
        assertFitting(service);
        assertEquals(200, first.post(session, PING).status());

        int left = OF_ALL - OF_ONE_PLACE - 1;
        assertEquals(Map.of(200, left, 503, MANY - left), fromMany(port));
        assertFitting(service);
        assertEquals(200, first.post(session, PING).status());
        assertTrue(service.mostMemoryMb() < MOST_MEMORY_MB, service.mostMemoryMb() + " MB at most");
        System.out.println(
            2 * MANY + " sessions asked for; " + service.mostMemoryMb() + " MB at most");

        assertEquals(503, first.open().status());
        assertEquals(
            200, first.send("DELETE", "/mcp", Map.of(Wire.SESSION, session), null).status());
        assertEquals(200, first.open().status());
      }
    }
  }

  private static Map<Integer, Integer> fromOne(int port) throws IOException {
    Map<Integer, Integer> byStatus = new TreeMap<>();
    try (Wire wire = new Wire(port, "127.0.0.2")) {
      for (int i = 0; i < MANY; i++) {
        Answer answer = wire.post(null, HELLO);
        byStatus.merge(answer.status(), 1, Integer::sum);
      }
    }
    return byStatus;
  }

  private static Map<Integer, Integer> fromMany(int port) throws IOException {
    Map<Integer, Integer> byStatus = new TreeMap<>();
    for (int i = 0; i < MANY; i++) {
      String from = "127.1." + i / 200 + "." + (1 + i % 200);
      try (Wire wire = new Wire(port, from)) {
        byStatus.merge(wire.post(null, HELLO).status(), 1, Integer::sum);
      }
    }
    return byStatus;
  }

  private static void assertFitting(PackagedService service)
      throws IOException, InterruptedException {
    URI address = service.address().resolve("/v1/fittings");
    HttpRequest fitting =
        HttpRequest.newBuilder(address)
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofFile(Path.of("openapi/examples/first-fitting.json")))
            .build();
    assertEquals(
        200, HttpClient.newHttpClient().send(fitting, BodyHandlers.discarding()).statusCode());
    HttpRequest health = HttpRequest.newBuilder(service.management().resolve("/q/health")).build();
    assertEquals(
        200, HttpClient.newHttpClient().send(health, BodyHandlers.discarding()).statusCode());
  }
}
