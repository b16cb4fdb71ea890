package easewright.packaged;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Clients that ask and do not read, that never finish a head, or only hold connections open, keep
 * nobody else from an answer (OWASP API4:2023, unrestricted resource consumption; CWE-400).
 */
@Tag("long")
class BadAskersIT {
  private static final String ONE_SIGN = "{\"signs\": [{\"sign\": \"straps-slip-off\"}]}";
  private static final String HEAD = "POST %s HTTP/1.1\r\nHost: localhost\r\nContent-Type: %s\r\n";
  private static final int MOST_MEMORY_MB = 450;
  private static final int AT_ONCE_MS = 50;

  /** Lines accepted a little later reach their bound later, on a busy machine by seconds. */
  private static final int ACCEPTED_LATER_MS = 5000;

  private final HttpClient client = HttpClient.newHttpClient();

  private int fitting(PackagedService service) throws InterruptedException {
    URI address = service.address().resolve("/v1/fittings");
    HttpRequest request =
        HttpRequest.newBuilder(address)
            .header("Content-Type", "application/json")
            .timeout(Duration.ofSeconds(15))
            .POST(BodyPublishers.ofString(ONE_SIGN))
            .build();
    try {
      return client.send(request, BodyHandlers.ofString()).statusCode();
    } catch (IOException unanswered) {
      return 0;
    }
  }

  private static List<Socket> ask(PackagedService service, int clients, String sent)
      throws IOException {
    List<Socket> sockets = new ArrayList<>();
    for (int i = 0; i < clients; i++) {
      Socket socket = new Socket();
      socket.setReceiveBufferSize(4096);
      socket.connect(new InetSocketAddress("127.0.0.1", service.address().getPort()));
      sockets.add(socket);
      push(socket, sent);
    }
    return sockets;
  }

  private static void push(Socket socket, String sent) throws IOException {
    try {
      socket.getOutputStream().write(sent.getBytes(ISO_8859_1));
    } catch (SocketException hungUp) {
      assertTrue(socket.isConnected());
    }
  }

  private static void leave(List<Socket> sockets) throws IOException {
    for (Socket socket : sockets) {
      socket.close();
    }
  }

  @Test
  void clients_that_read_nothing_take_no_memory_from_others() throws Exception {
    try (PackagedService service = PackagedService.start()) {
      for (String page : List.of("/rules", "/openapi.yaml")) {
        String asked = "GET " + page + " HTTP/1.1\r\nHost: localhost\r\n\r\n";
        List<Socket> deaf = ask(service, 60, asked.repeat(30));
        for (int i = 0; i < 20; i++) {
          assertEquals(200, fitting(service), "during " + page + ": " + service.log());
          Thread.sleep(150);
        }
        leave(deaf);
        assertEquals(200, fitting(service), "after " + page + ": " + service.log());
      }
      assertTrue(service.mostMemoryMb() < MOST_MEMORY_MB, service.mostMemoryMb() + " MB");
      assertTrue(!service.log().contains("ERROR"), service.log());
    }
  }

  @Test
  void heads_that_never_end_are_hung_up_on() throws Exception {
    try (PackagedService service = PackagedService.start("-Deasewright.limit.arrival=2S")) {
      List<Socket> slow = ask(service, 100, "GET /v1/signs HTTP/1.1\r\nHost: local");
      for (int drops = 0; drops < 20 && isOpen(slow.get(0), AT_ONCE_MS); drops++) {
        Thread.sleep(300);
        push(slow.get(0), "h"); // each byte would put off an idle timeout
        assertEquals(200, fitting(service));
      }
      for (Socket one : slow) {
        assertTrue(!isOpen(one, ACCEPTED_LATER_MS), "still open");
      }
      leave(slow);
    }
  }

  /** Whether the other side does not hang up within {@code patienceMs}. */
  private static boolean isOpen(Socket socket, int patienceMs) throws IOException {
    socket.setSoTimeout(patienceMs);
    try {
      return socket.getInputStream().read() >= 0;
    } catch (SocketTimeoutException silent) {
      return true;
    } catch (SocketException hungUp) {
      return false;
    }
  }

  /** The status of a fitting whose asker comes again once, as soon as a refusal allows. */
  private int patientFitting(PackagedService service) throws InterruptedException {
    int status = fitting(service);
    if (status == 503) {
      Thread.sleep(1000);
      status = fitting(service);
    }
    return status;
  }

  private static String begun(String path, String form, String rest) {
    return HEAD.formatted(path, form) + rest;
  }

  @Test
  void bodies_that_never_end_lose_their_slots_to_others() throws Exception {
    try (PackagedService service =
        PackagedService.start(
            "-Deasewright.limit.answers=100000 in 1M", "-Deasewright.limit.arrival=60S")) {
      for (String begun :
          List.of(
              begun("/v1/fittings", "application/json", "Content-Length: 2000\r\n\r\n{"),
              begun(
                  "/v1/fittings",
                  "application/json",
                  "Transfer-Encoding: chunked\r\n\r\n1\r\n{\r\n"),
              begun("/v1/cut-plans", "application/json", "Content-Length: 2000\r\n\r\n{"),
              begun(
                  "/desk/answer",
                  "application/x-www-form-urlencoded",
                  "Content-Length: 4000\r\n\r\ntext="),
              begun("/mcp", "application/json", "Content-Length: 4000\r\n\r\n{"))) {
        List<Socket> slow = ask(service, 200, begun);
        for (int i = 0; i < 10; i++) {
          slow.addAll(ask(service, 20, begun));
          assertEquals(200, patientFitting(service), begun);
        }
        leave(slow);
      }
      assertEquals(200, patientFitting(service));
      assertTrue(!service.log().contains("ERROR"), service.log());
    }
  }

  @Test
  void a_slow_body_is_waited_for_while_there_is_room() throws Exception {
    try (PackagedService service = PackagedService.start()) {
      String begun =
          begun(
              "/v1/fittings",
              "application/json",
              "Connection: close\r\nContent-Length: " + ONE_SIGN.length() + "\r\n\r\n");
      Socket slow = ask(service, 1, begun).get(0);
      for (String drop : ONE_SIGN.split("(?<=:)")) {
        Thread.sleep(1200);
        assertEquals(200, fitting(service));
        push(slow, drop);
      }
      String answer = new String(slow.getInputStream().readAllBytes(), ISO_8859_1);
      assertTrue(answer.startsWith("HTTP/1.1 200"), answer);
    }
  }

  @Test
  void lines_that_crawl_lose_their_slots_to_others() throws Exception {
    try (PackagedService service = PackagedService.start()) {
      String begun =
          begun(
              "/v1/fittings",
              "application/x-ndjson",
              "Transfer-Encoding: chunked\r\n\r\n1\r\n{\r\n");
      List<Socket> slow = ask(service, 60, begun);
      for (int i = 0; i < 2; i++) {
        Thread.sleep(2500);
        assertEquals(200, lines(service));
        slow.addAll(ask(service, 60, begun));
      }
      leave(slow);
    }
  }

  private int lines(PackagedService service) throws IOException, InterruptedException {
    HttpRequest request =
        HttpRequest.newBuilder(service.address().resolve("/v1/fittings"))
            .header("Content-Type", "application/x-ndjson")
            .POST(BodyPublishers.ofString(ONE_SIGN + "\n"))
            .build();
    return client.send(request, BodyHandlers.ofString()).statusCode();
  }

  @Test
  void connections_that_only_are_there_make_room_for_others() throws Exception {
    try (PackagedService service =
        PackagedService.start(
            "-Deasewright.limit.connections=100",
            "-Deasewright.limit.connections-of-one-place=60")) {
      List<Socket> idle = ask(service, 300, "");
      assertEquals(200, fitting(service));
      assertEquals(200, fitting(service));
      long open = 0;
      for (Socket one : idle) {
        open += isOpen(one, AT_ONCE_MS) ? 1 : 0;
      }
      assertTrue(open <= 60, open + " are open");
      leave(idle);
    }
  }

  @Test
  void a_flood_of_requests_on_one_connection_is_hung_up_on() throws Exception {
    try (PackagedService service = PackagedService.start()) {
      String tiny = "GET / HTTP/1.1\r\nHost: a\r\n\r\n".repeat(20_000);
      for (int i = 0; i < 50; i++) {
        List<Socket> flood = ask(service, 2, tiny);
        assertEquals(200, fitting(service), service.log());
        leave(flood);
      }
      assertTrue(service.mostMemoryMb() < MOST_MEMORY_MB, service.mostMemoryMb() + " MB");
    }
  }
}
