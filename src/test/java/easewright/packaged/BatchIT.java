package easewright.packaged;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
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
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A shop's archive through a real broker. What "exactly once in the result" means is Kafka's:
 * KIP-98, "Exactly Once Delivery and Transactional Messaging" (a reader of committed messages sees
 * each result once), and KIP-447 (of two workers that both hold a message for theirs, one can
 * commit).
 */
@Tag("long")
class BatchIT {
  private static final int FITTINGS = 1500;
  private static final int DIFFERENT = 25;
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final HttpClient HTTP = HttpClient.newHttpClient();

  @TempDir static Path folder;
  private static Broker broker;
  private static Topics topics;

  @BeforeAll
  static void startBroker() throws Exception {
    broker = Broker.start(folder);
    topics = new Topics(broker);
  }

  @AfterAll
  static void stopBroker() throws Exception {
    broker.close();
  }

  @Test
  void of_two_workers_one_is_killed_and_every_fitting_is_answered_once_as_over_http()
      throws Exception {
    makeTopics("archive");
    Map<String, byte[]> fittings = fittings();
    List<byte[]> poison = poison();
    Map<String, Answered> first;
    try (PackagedService one = worker("archive", "archive");
        PackagedService other = worker("archive", "archive")) {
      await(() -> shares("archive").equals(List.of(2, 2)));
      topics.send(
          fittings.entrySet().stream()
              .map(f -> message("archive", f.getKey(), f.getValue()))
              .toList());
      topics.send(
          IntStream.range(0, poison.size())
              .mapToObj(i -> message("archive", "poison-" + i, poison.get(i)))
              .toList());
      topics.send(List.of(message("archive", null, fittings.get("fitting-0"))));

      await(() -> answered(one) > 0 && answered(other) > 0);
      long before = answered(one) + answered(other);
      one.kill();
      assertTrue(before < FITTINGS, "Nothing was left to take over");

      first = answers("archive");
      assertEquals(fittings.keySet(), first.keySet());
      for (int i = 0; i < DIFFERENT; i++) {
        byte[] overHttp = post(other, fittings.get("fitting-" + i)).body();
        for (int same = i; same < FITTINGS; same += DIFFERENT) {
          assertArrayEquals(overHttp, first.get("fitting-" + same).value());
        }
      }
      assertSetAsOverHttp(other, poison);
      assertFalse(other.log().contains(" in\""), other::log);
    }
    assertEquals(List.of(), shares("archive"), "Who is stopped leaves the group at once");

    try (PackagedService again =
        worker("again", "archive", "-Deasewright.batch.topic.answers=again.answers")) {
      Map<String, Answered> second = answers("again");
      assertEquals(first.keySet(), second.keySet());
      second.forEach(
          (key, answer) -> {
            assertArrayEquals(first.get(key).value(), answer.value(), key);
            assertEquals(first.get(key).headers(), answer.headers());
          });
      assertTrue(again.log().contains("batch worker"), again::log);
    }
  }

  @Test
  void a_broker_killed_and_started_again_is_found_again_and_what_it_then_refuses_set_aside()
      throws Exception {
    makeTopics("outage");
    byte[] fitting = example("first-fitting.json");
    try (PackagedService worker = worker("outage", "outage")) {
      topics.send(List.of(message("outage", "before", fitting)));
      await(() -> answered(worker) == 1);
      broker.kill();
      await(() -> readiness(worker).equals("DOWN"));
      assertEquals(200, post(worker, fitting).statusCode());
      broker.startAgain();
      topics.send(List.of(message("outage", "after", fitting)));
      await(() -> answered(worker) == 2);
      assertEquals("UP", readiness(worker));

      List<ConsumerRecord<String, byte[]>> all =
          topics.committed("outage.answers", PATIENCE, read -> read.size() >= 2);
      assertEquals(2, all.size());

      topics.narrow("outage.answers", 500);
      topics.send(List.of(message("outage", "wide", fitting)));
      List<ConsumerRecord<String, byte[]>> aside =
          topics.committed("outage.aside", PATIENCE, read -> !read.isEmpty());
      assertEquals("wide", aside.get(0).key());
      assertEquals(
          "/problems/too-large-answer",
          JSON.readTree(aside.get(0).value()).path("type").textValue());
    }
  }

  /** The answer to a key, and its headers as text. */
  private record Answered(byte[] value, Map<String, String> headers) {}

  /** Every answer by its key; fails where a key or a source has two. */
  private static Map<String, Answered> answers(String name) {
    List<ConsumerRecord<String, byte[]>> all =
        topics.committed(
            name + ".answers",
            PATIENCE,
            read -> read.stream().map(ConsumerRecord::key).distinct().count() >= FITTINGS);
    Map<String, Answered> byKey = new LinkedHashMap<>();
    Set<String> sources = new HashSet<>();
    for (ConsumerRecord<String, byte[]> answer : all) {
      Map<String, String> headers = headers(answer);
      assertTrue(
          sources.add(headers.get("source-partition") + " " + headers.get("source-offset")),
          "A source is answered twice");
      assertEquals(
          null, byKey.put(answer.key(), new Answered(answer.value(), headers)), answer.key());
    }
    return byKey;
  }

  private static Map<String, String> headers(ConsumerRecord<String, byte[]> message) {
    return Arrays.stream(message.headers().toArray())
        .collect(Collectors.toMap(h -> h.key(), h -> new String(h.value(), UTF_8)));
  }

  /** RFC 9457: the problem set aside is the document the endpoint gives for the same bytes. */
  private static void assertSetAsOverHttp(PackagedService service, List<byte[]> poison)
      throws IOException, InterruptedException {
    Map<String, ConsumerRecord<String, byte[]>> aside =
        topics.committed("archive.aside", PATIENCE, read -> read.size() > poison.size()).stream()
            .collect(Collectors.toMap(m -> String.valueOf(m.key()), m -> m));
    assertEquals(poison.size() + 1, aside.size());
    for (int i = 0; i < poison.size(); i++) {
      HttpResponse<byte[]> refusal = post(service, poison.get(i));
      ConsumerRecord<String, byte[]> told = aside.get("poison-" + i);
      assertEquals(JSON.readTree(refusal.body()), JSON.readTree(told.value()));
      assertEquals("application/problem+json", headers(told).get("content-type"));
    }
    JsonNode noKey = JSON.readTree(aside.get("null").value());
    assertEquals("/problems/no-key", noKey.path("type").textValue());
  }

  /** Not JSON, no text at all, nothing, no object, unknown words, what can't be, and too large. */
  private static List<byte[]> poison() throws IOException {
    List<byte[]> poison = new ArrayList<>();
    poison.add("{\"signs\": [".getBytes(UTF_8));
    poison.add(new byte[] {0, 0, (byte) 0xff, (byte) 0xfe, 0x7b});
    poison.add(new byte[0]);
    poison.add("[1, 2]".getBytes(UTF_8));
    poison.add("{\"signs\": [{\"sign\": \"sings-at-night\"}]}".getBytes(UTF_8));
    poison.add(example("impossible-body.json"));
    poison.add(" ".repeat(257 * 1024).getBytes(UTF_8));
    return poison;
  }

  /** Fittings by their keys; every {@value #DIFFERENT}th is the same but for its key. */
  private static Map<String, byte[]> fittings() throws IOException {
    String fitting = new String(example("first-fitting.json"), UTF_8);
    Map<String, byte[]> all = new LinkedHashMap<>();
    for (int i = 0; i < FITTINGS; i++) {
      String bust = (36 + i % DIFFERENT * 0.125) + " in";
      all.put("fitting-" + i, fitting.replace("36 3/4 in", bust).getBytes(UTF_8));
    }
    return all;
  }

  private static byte[] example(String name) throws IOException {
    return Files.readAllBytes(Path.of("openapi/examples", name));
  }

  private static ProducerRecord<String, byte[]> message(String name, String key, byte[] value) {
    return new ProducerRecord<>(name + ".fittings", key, value);
  }

  private static void makeTopics(String name) throws Exception {
    topics.make(
        new NewTopic(name + ".fittings", 4, (short) 1),
        new NewTopic(name + ".answers", 4, (short) 1),
        new NewTopic(name + ".aside", 1, (short) 1));
    if (name.equals("archive")) {
      topics.make(new NewTopic("again.answers", 4, (short) 1));
    }
  }

  private static PackagedService worker(String group, String name, String... more)
      throws IOException {
    Path settings = folder.resolve("client.properties");
    // As quick to give up on the dead as the broker lets one be.
    Files.writeString(settings, "session.timeout.ms=6000\nheartbeat.interval.ms=1000\n");
    List<String> options =
        new ArrayList<>(
            List.of(
                "-Deasewright.batch.brokers=" + broker.address(),
                "-Deasewright.batch.group=" + group,
                "-Deasewright.batch.topic.fittings=" + name + ".fittings",
                "-Deasewright.batch.topic.answers=" + name + ".answers",
                "-Deasewright.batch.topic.set-aside=" + name + ".aside",
                "-Deasewright.batch.client-config=" + settings));
    options.addAll(List.of(more));
    return PackagedService.start(options.toArray(String[]::new));
  }

  private static List<Integer> shares(String group) {
    try {
      return topics.shares(group);
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  private static long answered(PackagedService service) {
    return health(service).at("/data/answered").longValue();
  }

  private static String readiness(PackagedService service) {
    return health(service).path("status").textValue();
  }

  private static JsonNode health(PackagedService service) {
    try {
      HttpRequest ready =
          HttpRequest.newBuilder(service.management().resolve("/q/health/ready")).build();
      for (JsonNode check :
          JSON.readTree(HTTP.send(ready, BodyHandlers.ofByteArray()).body()).path("checks")) {
        if (check.path("name").textValue().equals("batch")) {
          return check;
        }
      }
      throw new AssertionError("The worker's health is not told");
    } catch (IOException | InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  private static HttpResponse<byte[]> post(PackagedService service, byte[] fitting)
      throws IOException, InterruptedException {
    HttpRequest request =
        HttpRequest.newBuilder(service.address().resolve("/v1/fittings?detail=full"))
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofByteArray(fitting))
            .build();
    return HTTP.send(request, BodyHandlers.ofByteArray());
  }

  private static void await(BooleanSupplier state) throws InterruptedException {
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (!state.getAsBoolean()) {
      assertTrue(System.nanoTime() < end, "It did not come to it in " + PATIENCE);
      Thread.sleep(20);
    }
  }
}
