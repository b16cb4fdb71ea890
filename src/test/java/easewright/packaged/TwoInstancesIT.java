package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.clinic.RealPostgres;
import easewright.clinic.StoreAddress;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two instances serve one clinic from one PostgreSQL, behind a balancer. One is killed (SIGKILL)
 * amid writes: the other goes on, and whatever was acknowledged by either is there, once.
 */
@Tag("long")
@EnabledIf("easewright.packaged.Balancer#canRun")
class TwoInstancesIT {
  private static final int WRITERS = 6;
  private static final int SHARE = 10;

  /** A busy machine takes its time. */
  private static final Duration LATEST = Duration.ofMinutes(2);

  private static final ObjectMapper JSON = new ObjectMapper();

  private final HttpClient client = HttpClient.newHttpClient();
  private final Queue<String> acknowledged = new ConcurrentLinkedQueue<>();
  private final AtomicInteger sinceTheKill = new AtomicInteger();
  private volatile boolean killed;
  private volatile boolean over;

  @Test
  void one_of_two_instances_is_killed_amid_writes_and_nothing_acknowledged_is_lost(
      @TempDir Path folder) throws Exception {
    StoreAddress database = RealPostgres.emptyDatabase();
    try (PackagedService first = instance(database);
        PackagedService second = instance(database);
        Balancer balancer = Balancer.before(folder, List.of(first, second))) {
      URI address = balancer.address();
      JsonNode opened =
          read(
              send(
                  address,
                  null,
                  "/v1/clinics",
                  "{\"name\": \"Circle\", \"organiser\": \"Odile\"}"));
      String key = opened.at("/key/key").textValue();
      String clinic = "/v1/clinics/" + opened.at("/clinic/id").textValue();
      String cases = clinic + "/cases";

      ExecutorService writers = Executors.newFixedThreadPool(WRITERS);
      List<Future<?>> running = new ArrayList<>();
      for (int writer = 0; writer < WRITERS; writer++) {
        String nickname = "Wearer " + writer;
        JsonNode one =
            read(
                send(
                    address,
                    key,
                    cases,
                    JSON.createObjectNode().put("nickname", nickname).toString()));
        String rounds = cases + "/" + one.path("id").textValue() + "/rounds";
        running.add(writers.submit(() -> write(address, key, rounds, nickname)));
      }
      await("both have their share", () -> roundsTakenBy(first) >= SHARE);
      await("both have their share", () -> roundsTakenBy(second) >= SHARE);
      first.kill();
      killed = true;
      await("the other goes on", () -> sinceTheKill.get() > WRITERS);
      over = true;
      for (Future<?> writer : running) {
        writer.get();
      }
      writers.shutdown();

      List<String> kept = new ArrayList<>();
      for (JsonNode story : read(send(address, key, clinic + "/export", null)).path("cases")) {
        assertEquals(story.at("/case/rounds").intValue(), story.path("rounds").size());
        story.path("rounds").forEach(round -> kept.add(round.path("post").textValue()));
        story.path("rounds").forEach(round -> assertTrue(round.at("/advice/causes").isArray()));
      }
      Set<String> once = new HashSet<>(kept);
      assertEquals(once.size(), kept.size(), "nothing is kept twice");
      assertTrue(once.containsAll(acknowledged), kept.size() + " of " + acknowledged.size());
      // Whatever an instance was writing when it was killed may be there unacknowledged.
      assertTrue(kept.size() <= acknowledged.size() + WRITERS, kept.size() + " are kept");
    }
  }

  private static PackagedService instance(StoreAddress database) {
    return PackagedService.start(
        "-Deasewright.clinic.url=" + database.url(),
        "-Deasewright.clinic.user=" + database.user(),
        "-Deasewright.clinic.password=" + database.password());
  }

  private void write(URI address, String key, String rounds, String nickname) {
    for (int i = 0; !over; i++) {
      String post = "The band rides up at the back, says " + nickname + " for the time " + i;
      boolean afterwards = killed;
      try {
        String body = JSON.createObjectNode().put("text", post).toString();
        if (send(address, key, rounds, body).statusCode() == 201) {
          acknowledged.add(post);
          if (afterwards) {
            sinceTheKill.incrementAndGet();
          }
        }
      } catch (IOException unanswered) {
        // Nobody was told that it is kept.
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
  }

  private static void await(String what, Callable<Boolean> reached) throws Exception {
    Instant latest = Instant.now().plus(LATEST);
    while (!reached.call()) {
      assertTrue(Instant.now().isBefore(latest), what);
      Thread.sleep(100);
    }
  }

  private double roundsTakenBy(PackagedService instance) throws Exception {
    String metrics = send(instance.management(), null, "/q/metrics", null).body();
    return metrics
        .lines()
        .filter(line -> line.startsWith("http_server_requests_seconds_count"))
        .filter(line -> line.contains("/rounds\"") && line.contains("status=\"201\""))
        .mapToDouble(line -> Double.parseDouble(line.substring(line.lastIndexOf(' '))))
        .sum();
  }

  private HttpResponse<String> send(URI address, String key, String path, String body)
      throws IOException, InterruptedException {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(address.resolve(path)).timeout(Duration.ofSeconds(20));
    if (key != null) {
      request.header("Authorization", "Bearer " + key);
    }
    if (body != null) {
      request.header("Content-Type", "application/json").POST(BodyPublishers.ofString(body));
    }
    return client.send(request.build(), BodyHandlers.ofString());
  }

  private static JsonNode read(HttpResponse<String> answer) throws IOException {
    assertTrue(answer.statusCode() < 300, answer.statusCode() + " " + answer.body());
    return JSON.readTree(answer.body());
  }
}
