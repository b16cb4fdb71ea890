package easewright.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import easewright.packaged.PackagedService;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What an answer costs over HTTP beside reading and giving back the same fitting: four levels asked
 * in turn of one packaged service, by clients on the same machine. Compare the rows of one run with
 * each other; the numbers alone depend on the machine, the load generator included.
 */
public final class LevelsBenchmark {
  private static final Path FOLDER = Path.of("src/test/resources/easewright/bench");
  private static final int CLIENTS = 32;
  private static final int MANY = 128;
  private static final int LINES = 2_000;
  private static final int ROUNDS = 3;
  private static final Duration WARMING = Duration.ofSeconds(40);
  private static final Duration MEASURING = Duration.ofSeconds(8);
  private static final Duration PAUSE_WHEN_REFUSED = Duration.ofMillis(50);

  private static final String[] BUSY_SERVER = {"-XX:TieredStopAtLevel=4", "-Xms192m", "-Xmn96m"};

  /** A kind of request, and how many fittings one holds. */
  private record Level(String name, Call call, int fittings, int clients) {}

  private final URI service;
  private final List<Level> levels;

  private LevelsBenchmark(URI service) throws IOException {
    this.service = service;
    byte[] typical = Files.readAllBytes(FOLDER.resolve("typical-fitting.json"));
    byte[] post = Files.readAllBytes(FOLDER.resolve("typical-post.json"));
    String line = new String(typical, UTF_8).replaceAll("\\s*\\n\\s*", " ") + "\n";
    this.levels =
        List.of(
            new Level("a: read and give back", ok("/v1/fittings/checks", typical), 1, CLIENTS),
            new Level("b: answer", ok("/v1/fittings", typical), 1, CLIENTS),
            new Level("c: read a post and answer", ok("/v1/fittings", post), 1, CLIENTS),
            new Level(
                "d: answer lines",
                new Call(
                    "POST",
                    "/v1/fittings",
                    Map.of("Content-Type", "application/x-ndjson"),
                    line.repeat(LINES).getBytes(UTF_8),
                    (status, body) -> status == 200),
                LINES,
                Runtime.getRuntime().availableProcessors()));
  }

  private static Call ok(String path, byte[] json) {
    return Call.post(path, json, (status, body) -> status == 200 || status == 503);
  }

  /**
   * Runs it: {@code mvn -q -DskipTests package exec:exec@benchmark -Dbenchmark=LevelsBenchmark}.
   */
  public static void main(String[] args) throws Exception {
    try (PackagedService packaged = PackagedService.start(BUSY_SERVER)) {
      long idle = packaged.memoryMb();
      new LevelsBenchmark(packaged.address()).run();
      System.out.printf(
          "%nResident memory: %d MB before the load, %d MB at most.%n",
          idle, packaged.mostMemoryMb());
    }
  }

  private void run() throws InterruptedException {
    for (Level level : levels) {
      load(level, WARMING);
    }
    Map<Level, List<Outcome>> outcomes = new LinkedHashMap<>();
    for (int round = 0; round < ROUNDS; round++) {
      for (Level level : levels) {
        outcomes.computeIfAbsent(level, any -> new ArrayList<>()).add(load(level, MEASURING));
      }
    }
    System.out.println("| level | fittings a second | to a | p50, ms | p99, ms |");
    System.out.println("|---|---|---|---|---|");
    double first = perSecond(levels.get(0), middle(outcomes.get(levels.get(0))));
    outcomes.forEach(
        (level, runs) -> {
          Outcome middle = middle(runs);
          double rate = perSecond(level, middle);
          System.out.printf(
              "| %s | %.0f | %.2f | %.1f | %.1f |%n",
              level.name(), rate, rate / first, middle.servedMs(50), middle.servedMs(99));
        });
    Level answer = levels.get(1);
    Outcome usual = middle(outcomes.get(answer));
    Outcome many =
        Load.closed(service, MANY, MEASURING, answer::call)
            .pausingWhenRefused(PAUSE_WHEN_REFUSED)
            .run();
    Outcome steady =
        Load.open(service, usual.servedPerSecond() * 0.7, MANY, MEASURING, answer::call).run();
    System.out.printf("%n%d clients, b: %s%n", MANY, many);
    System.out.printf("70 %% of b's rate: %s%n", steady);
    System.out.printf(
        "Kept of the rate at %d clients: %.2f; p99 to that at %d: %.1f; at 70 %% p99 to p50: %.1f%n",
        MANY,
        many.servedPerSecond() / usual.servedPerSecond(),
        CLIENTS,
        many.servedMs(99) / usual.servedMs(99),
        steady.servedMs(99) / steady.servedMs(50));
    if (usual.wrong() + many.wrong() + steady.wrong() > 0) {
      throw new IllegalStateException("Some answers were wrong.");
    }
  }

  private Outcome load(Level level, Duration time) throws InterruptedException {
    return Load.closed(service, level.clients(), time, level::call)
        .pausingWhenRefused(PAUSE_WHEN_REFUSED)
        .run();
  }

  private static double perSecond(Level level, Outcome outcome) {
    return outcome.servedPerSecond() * level.fittings();
  }

  private static Outcome middle(List<Outcome> runs) {
    return runs.stream()
        .sorted(Comparator.comparingDouble(Outcome::servedPerSecond))
        .toList()
        .get(runs.size() / 2);
  }
}
