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
      for (int drops = 0; drops < 20 && isOpen(slow.get(0)); drops++) {
        Thread.sleep(300);
        push(slow.get(0), "h"); // each byte would put off an idle timeout
        assertEquals(200, fitting(service));
      }
      for (Socket one : slow) {
        assertTrue(!isOpen(one), "still open");
      }
      leave(slow);
    }
  }

  /** Whether the other side has not hung up. */
  private static boolean isOpen(Socket socket) throws IOException {
    socket.setSoTimeout(50);
    try {
      return socket.getInputStream().read() >= 0;
    } catch (SocketTimeoutException silent) {
      return true;
    } catch (SocketException hungUp) {
      return false;
    }
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
        open += isOpen(one) ? 1 : 0;
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
