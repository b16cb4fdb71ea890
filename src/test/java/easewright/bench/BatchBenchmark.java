package easewright.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.packaged.Broker;
import easewright.packaged.PackagedService;
import easewright.packaged.Topics;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * What a fitting of a large batch costs the packaged service, through a broker and as lines of a
 * request; broker and sender included, on the same machine. It needs the jar and the broker: {@code
 * mvn -q -DskipTests package antrun:run@broker}.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 20)
@Measurement(iterations = 6)
@Fork(1)
public class BatchBenchmark {
  private static final int FITTINGS = 2000;
  private static final ObjectMapper JSON = new ObjectMapper();

  /** Workers of the process, or requests at once. */
  @Param({"1", "2"})
  public int atOnce;

  /**
   * What the service's process spent on a fitting, the broker and the sender left out; the last
   * table shows the sum of the iterations.
   */
  @State(Scope.Thread)
  @AuxCounters(AuxCounters.Type.EVENTS)
  public static class Spent {
    public double processorMicros;
  }

  private final HttpClient http = HttpClient.newHttpClient();
  private byte[] fitting;
  private Path folder;
  private Broker broker;
  private Topics topics;
  private PackagedService service;

  @Setup
  public void start() throws Exception {
    fitting =
        JSON.writeValueAsBytes(
            JSON.readTree(Path.of("openapi/examples/first-fitting.json").toFile()));
    folder = Files.createTempDirectory("broker");
    broker = Broker.start(folder);
    topics = new Topics(broker);
    topics.make(
        new NewTopic("easewright.fittings", 4, (short) 1),
        new NewTopic("easewright.answers", 4, (short) 1),
        new NewTopic("easewright.set-aside", 1, (short) 1));
    service =
        PackagedService.start(
            "-XX:TieredStopAtLevel=4",
            "-Deasewright.batch.brokers=" + broker.address(),
            "-Deasewright.batch.workers=" + atOnce);
  }

  @Benchmark
  @OperationsPerInvocation(FITTINGS)
  public long throughTheBroker(Spent spent) throws Exception {
    Duration start = service.processorTime();
    long before = answered();
    topics.send(
        IntStream.range(0, FITTINGS)
            .mapToObj(i -> new ProducerRecord<>("easewright.fittings", "fitting-" + i, fitting))
            .toList());
    while (answered() < before + FITTINGS) {
      Thread.sleep(10);
    }
    note(spent, start);
    return answered();
  }

  @Benchmark
  @OperationsPerInvocation(FITTINGS)
  public long asLinesOfARequest(Spent spent) {
    Duration start = service.processorTime();
    long answered =
        IntStream.range(0, atOnce)
            .mapToObj(i -> CompletableFuture.supplyAsync(() -> lines(FITTINGS / atOnce)))
            .toList()
            .stream()
            .mapToLong(CompletableFuture::join)
            .sum();
    note(spent, start);
    return answered;
  }

  private void note(Spent spent, Duration start) {
    spent.processorMicros = service.processorTime().minus(start).toNanos() / 1000.0 / FITTINGS;
  }

  private long lines(int count) {
    byte[] line = (new String(fitting, UTF_8) + "\n").getBytes(UTF_8);
    HttpRequest request =
        HttpRequest.newBuilder(service.address().resolve("/v1/fittings"))
            .version(HttpClient.Version.HTTP_1_1)
            .header("Content-Type", "application/x-ndjson")
            .header("Accept", "application/x-ndjson")
            .POST(BodyPublishers.ofByteArrays(Stream.generate(() -> line).limit(count)::iterator))
            .build();
    try (Stream<String> answers = http.send(request, BodyHandlers.ofLines()).body()) {
      return answers.filter(answer -> answer.contains("\"causes\":")).count();
    } catch (IOException | InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private long answered() throws IOException, InterruptedException {
    HttpRequest ready =
        HttpRequest.newBuilder(service.management().resolve("/q/health/ready")).build();
    JsonNode health = JSON.readTree(http.send(ready, BodyHandlers.ofByteArray()).body());
    for (JsonNode check : health.path("checks")) {
      if (check.path("name").textValue().equals("batch")) {
        return check.at("/data/answered").longValue();
      }
    }
    throw new IllegalStateException("There is no worker");
  }

  @TearDown
  public void stop() throws Exception {
    service.close();
    broker.close();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }

  public static void main(String[] args) throws RunnerException {
    new Runner(new OptionsBuilder().include(BatchBenchmark.class.getSimpleName()).build()).run();
  }
}
