package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A service without memory answers nothing rightly, and can't know what of it still works; so it
 * ends, and whoever runs it starts it again. Here its bound for bodies, which keeps that from
 * happening, is taken away.
 */
@Tag("long")
class OutOfMemoryIT {
  /**
   * What the Java machine ends with then (HotSpot, {@code ExitOnOutOfMemoryError}; common
   * practice).
   */
  private static final int WITHOUT_MEMORY = 3;

  private static final byte[] MEGABYTE = " ".repeat(1 << 20).getBytes();
  private static final int HEAP_MB = 64;

  private final HttpClient client = HttpClient.newHttpClient();

  /** Keeps no connection open from before, which would end with another exception. */
  private final HttpClient afterwards = HttpClient.newHttpClient();

  @Test
  void a_service_without_memory_ends_rather_than_fail_and_say_that_it_is_well() throws Exception {
    try (PackagedService service =
        PackagedService.start(
            "-Xmx" + HEAP_MB + "m",
            "-Dquarkus.http.limits.max-body-size=1G",
            "-Deasewright.limit.body=1G")) {
      assertEquals(200, status(client, service.management().resolve("/q/health")));
      HttpRequest huge =
          HttpRequest.newBuilder(service.address().resolve("/v1/fittings"))
              .header("Content-Type", "application/json")
              .timeout(Duration.ofMinutes(1))
              .POST(
                  BodyPublishers.ofByteArrays(
                      Stream.generate(() -> MEGABYTE).limit(4 * HEAP_MB)::iterator))
              .build();
      assertThrows(IOException.class, () -> client.send(huge, BodyHandlers.discarding()));
      assertTrue(service.endsWithin(30), () -> "It goes on without memory:\n" + service.log());
      assertEquals(WITHOUT_MEMORY, service.exitValue(), service.log());
      assertThrows(
          ConnectException.class,
          () -> status(afterwards, service.management().resolve("/q/health")));
    }
  }

  private static int status(HttpClient by, URI address) throws IOException, InterruptedException {
    return by.send(HttpRequest.newBuilder(address).build(), BodyHandlers.discarding()).statusCode();
  }
}
