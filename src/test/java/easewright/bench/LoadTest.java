package easewright.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.time.Duration;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The load generator counts what a server that counts itself was asked. */
class LoadTest {
  private final AtomicLong asked = new AtomicLong();
  private final ExecutorService workers = Executors.newFixedThreadPool(4);
  private HttpServer server;

  @BeforeEach
  void start() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.setExecutor(workers);
    server.createContext(
        "/",
        exchange -> {
          byte[] body = exchange.getRequestBody().readAllBytes();
          int status = asked.incrementAndGet() % 10 == 0 ? 503 : 200;
          exchange.sendResponseHeaders(status, body.length);
          exchange.getResponseBody().write(body);
          exchange.close();
        });
    server.start();
  }

  @AfterEach
  void stop() {
    server.stop(0);
    workers.shutdown();
  }

  private URI address() {
    return URI.create("http://127.0.0.1:" + server.getAddress().getPort());
  }

  @Test
  void clients_who_ask_again_are_all_counted() throws InterruptedException {
    Load load =
        Load.closed(
            address(),
            4,
            Duration.ofMillis(500),
            () -> Call.post("/", new byte[] {'a'}, (status, body) -> status == 200));
    Outcome outcome = load.threads(2).run();
    assertEquals(asked.get(), outcome.count(200) + outcome.count(503), outcome.toString());
    assertEquals(asked.get() / 10, outcome.count(503));
    assertEquals(outcome.count(503), outcome.wrong(), "The calls said that 503 is wrong.");
    assertEquals(outcome.count(200), outcome.served().getTotalCount());
    assertEquals(0, outcome.failed().size(), outcome.toString());
    assertTrue(outcome.count(200) > 10, outcome.toString());
  }

  @Test
  void a_steady_rate_asks_as_often_as_it_says() throws InterruptedException {
    Load load =
        Load.open(
            address(),
            200,
            4,
            Duration.ofSeconds(1),
            () -> Call.get("/", (status, body) -> body.length == 0));
    Outcome outcome = load.run();
    long never = outcome.failed().getOrDefault("NeverSent", 0L);
    assertEquals(200, asked.get() + never, outcome.toString());
    assertEquals(0, outcome.wrong());
  }

  @Test
  void another_machine_is_never_put_under_load() {
    assertThrows(
        IllegalArgumentException.class,
        () -> Load.closed(URI.create("http://example.com"), 1, Duration.ofSeconds(1), () -> null));
  }
}
