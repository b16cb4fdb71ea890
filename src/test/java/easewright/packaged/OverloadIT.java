package easewright.packaged;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.bench.Call;
import easewright.bench.Load;
import easewright.bench.Outcome;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiPredicate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Ten times as many clients as the service deals with at once, asking again without a pause: what
 * is answered is right, what was acknowledged is kept, memory stays bounded, health stays green,
 * and soon after all is well. For two minutes with {@code -Deasewright.overload.seconds=120}.
 */
@Tag("long")
class OverloadIT {
  private static final Duration TIME =
      Duration.ofSeconds(Integer.getInteger("easewright.overload.seconds", 12));
  private static final int AT_ONCE = 32;
  private static final int TIMES = 10;
  private static final int CASES = 40;
  private static final int ROUNDS_A_SECOND = 20;
  private static final int LINES = 10;

  /**
   * 350 for the service, and 120 for the trained reader, which the posts among the requests use.
   */
  private static final int MOST_MEMORY_MB = 350 + 120;

  private static final String ONE_SIGN = "{\"signs\": [{\"sign\": \"straps-slip-off\"}]}";
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir Path folder;
  private final HttpClient client = HttpClient.newHttpClient();

  @Test
  void ten_times_what_it_can_do_harms_nothing() throws Exception {
    try (PackagedService service =
        PackagedService.start(
            "-Xmx128m",
            "-XX:MaxDirectMemorySize=64m",
            "-Deasewright.limit.at-once=" + AT_ONCE,
            "-Deasewright.clinic.store=" + folder.resolve("store"))) {
      URI address = service.address();
      Clinic clinic = openClinic(address);
      List<Call> calls = calls(address);
      AtomicInteger turn = new AtomicInteger();
      Load readers =
          Load.closed(
              address,
              AT_ONCE * TIMES,
              TIME,
              () -> calls.get(turn.getAndIncrement() % calls.size()));
      Set<String> acknowledged = new ConcurrentSkipListSet<>();
      Load writers =
          Load.open(address, ROUNDS_A_SECOND, 20, TIME, () -> clinic.round(acknowledged));

      CompletableFuture<Outcome> read = CompletableFuture.supplyAsync(() -> run(readers));
      CompletableFuture<Outcome> written = CompletableFuture.supplyAsync(() -> run(writers));
      int looks = 0;
      while (!read.isDone()) {
        assertEquals(
            200, get(service.management(), "/q/health").statusCode(), "health, look " + looks);
        looks++;
        Thread.sleep(200);
      }
      System.out.println("reading " + read.join());
      System.out.println("writing " + written.join());
      System.out.println(
          looks + " looks at health, all green; " + service.mostMemoryMb() + " MB at most");

      assertSound(read.join(), service);
      assertSound(written.join(), service);
      assertTrue(read.join().count(503) > 0, "It was never too much: " + read.join());
      assertTrue(service.mostMemoryMb() < MOST_MEMORY_MB, service.mostMemoryMb() + " MB");
      for (Call call : calls) {
        HttpResponse<byte[]> again = send(address, call);
        assertTrue(
            again.statusCode() == 200 && call.right().test(200, again.body()),
            again.statusCode() + " afterwards at " + call.path());
      }
      Set<String> missing = new TreeSet<>(acknowledged);
      missing.removeAll(clinic.posts(address));
      assertEquals(Set.of(), missing);
      assertTrue(acknowledged.size() > 0, "No round was acknowledged: " + written.join());
    }
  }

  private static void assertSound(Outcome outcome, PackagedService service) {
    assertEquals(0, outcome.wrong(), outcome + "\n" + service.log());
    // What the generator had no connection for was never asked.
    Set<String> failed = new TreeSet<>(outcome.failed().keySet());
    failed.remove("NeverSent");
    assertEquals(Set.of(), failed, outcome + "\n" + service.log());
    assertEquals(
        outcome.count(200) + outcome.count(201) + outcome.count(503),
        outcome.byStatus().values().stream().mapToLong(Long::longValue).sum(),
        outcome + "\n" + service.log());
  }

  private static Outcome run(Load load) {
    try {
      return load.run();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /**
   * What is read meanwhile: answers, plans, many lines, a page; each with what was said at rest.
   */
  private List<Call> calls(URI address) throws IOException, InterruptedException {
    List<Call> calls = new ArrayList<>();
    byte[] first = Files.readAllBytes(Path.of("openapi/examples/first-fitting.json"));
    byte[] plan = Files.readAllBytes(Path.of("openapi/examples/cut-plan-whole.json"));
    byte[] post = Files.readAllBytes(Path.of("openapi/examples/a-post.json"));
    for (int i = 0; i < 5; i++) {
      calls.add(Call.post("/v1/fittings", first));
    }
    calls.add(Call.post("/v1/fittings", ONE_SIGN.getBytes(UTF_8)));
    calls.add(Call.post("/v1/intakes", post));
    calls.add(Call.post("/v1/cut-plans", plan));
    calls.add(Call.get("/rules/band-too-long", (status, body) -> true));
    calls.add(Call.get("/desk", (status, body) -> true));
    calls.add(
        Call.post("/v1/fittings", (ONE_SIGN + "\n").repeat(LINES).getBytes(UTF_8))
            .with("Content-Type", "application/x-ndjson"));
    List<Call> judged = new ArrayList<>();
    for (Call call : calls) {
      byte[] expected = send(address, call).body();
      assertTrue(expected.length > 0);
      judged.add(new Call(call.method(), call.path(), call.headers(), call.body(), same(expected)));
    }
    return judged;
  }

  /** Served with just this, or refused with a problem that says so. */
  private static BiPredicate<Integer, byte[]> same(byte[] expected) {
    return (status, body) -> status == 200 ? Arrays.equals(expected, body) : isBusy(status, body);
  }

  private static boolean isBusy(int status, byte[] body) {
    return status == 503 && new String(body, UTF_8).contains("/problems/busy");
  }

  private HttpResponse<byte[]> get(URI address, String path)
      throws IOException, InterruptedException {
    return client.send(
        HttpRequest.newBuilder(address.resolve(path)).timeout(Duration.ofSeconds(10)).build(),
        BodyHandlers.ofByteArray());
  }

  private HttpResponse<byte[]> send(URI address, Call call)
      throws IOException, InterruptedException {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(address.resolve(call.path()))
            .method(call.method(), BodyPublishers.ofByteArray(call.body()));
    call.headers().forEach(request::header);
    return client.send(request.build(), BodyHandlers.ofByteArray());
  }

  private Clinic openClinic(URI address) throws IOException, InterruptedException {
    JsonNode opened =
        JSON.readTree(
            send(
                    address,
                    Call.post(
                        "/v1/clinics",
                        "{\"name\": \"Circle\", \"organiser\": \"Odile\"}".getBytes(UTF_8)))
                .body());
    Clinic clinic =
        new Clinic(
            opened.at("/key/key").textValue(),
            "/v1/clinics/" + opened.at("/clinic/id").textValue() + "/cases",
            new ArrayList<>());
    for (int i = 0; i < CASES; i++) {
      Call open = clinic.with(Call.post(clinic.path(), "{\"nickname\": \"W\"}".getBytes(UTF_8)));
      clinic.cases().add(JSON.readTree(send(address, open).body()).path("id").textValue());
    }
    return clinic;
  }

  /** A clinic and its cases, into which rounds are written. */
  private final class Clinic {
    private final String key;
    private final String path;
    private final List<String> cases;
    private final AtomicInteger rounds = new AtomicInteger();

    Clinic(String key, String path, List<String> cases) {
      this.key = key;
      this.path = path;
      this.cases = cases;
    }

    String path() {
      return path;
    }

    List<String> cases() {
      return cases;
    }

    Call with(Call call) {
      return call.with("Authorization", "Bearer " + key);
    }

    Call round(Set<String> acknowledged) {
      int number = rounds.getAndIncrement();
      String post = "The straps slip off, says number " + number + ".";
      return with(
          Call.post(
              path + "/" + cases.get(number % cases.size()) + "/rounds",
              ("{\"text\": \"" + post + "\"}").getBytes(UTF_8),
              (status, body) -> {
                if (status == 201) {
                  acknowledged.add(post);
                }
                return status == 201 || isBusy(status, body);
              }));
    }

    Set<String> posts(URI address) throws IOException, InterruptedException {
      Set<String> posts = new TreeSet<>();
      for (String one : cases) {
        Call story = with(Call.get(path + "/" + one, (status, body) -> true));
        JSON.readTree(send(address, story).body())
            .path("rounds")
            .forEach(round -> posts.add(round.path("post").textValue()));
      }
      return posts;
    }
  }
}
