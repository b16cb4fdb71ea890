package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.rulebook.BookCopy;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A rule writer with the jar and a folder: no Maven, no sources. */
@Tag("long")
class RuleWriterIT {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String POST = "{\"text\": \"My band wanders skyward behind.\"}";
  private static final String SAYINGS = "everyday/sayings/band.yaml";
  private static final String RULE = "sports-bra/band/band-too-long.dslr";

  @TempDir Path folder;

  private final HttpClient client = HttpClient.newHttpClient();

  private String told(PackagedService service, String path) throws Exception {
    return client
        .send(
            HttpRequest.newBuilder(
                    (path.startsWith("/q") ? service.management() : service.address())
                        .resolve(path))
                .header("Accept", path.startsWith("/q") ? "*/*" : "text/html")
                .build(),
            BodyHandlers.ofString())
        .body();
  }

  private JsonNode answer(PackagedService service) throws Exception {
    return JSON.readTree(
        client
            .send(
                HttpRequest.newBuilder(service.address().resolve("/v1/fittings?detail=full"))
                    .header("Content-Type", "application/json")
                    .POST(HttpRequest.BodyPublishers.ofString(POST))
                    .build(),
                BodyHandlers.ofString())
            .body());
  }

  private static boolean understands(JsonNode answer) {
    return answer.at("/understood/signs/0/id").asText().equals("band-rides-up-at-the-back");
  }

  private BookCopy withPhrase(String phrase) {
    BookCopy book = BookCopy.in(folder.resolve("book"));
    teach(book, phrase);
    return book;
  }

  private static void teach(BookCopy book, String phrase) {
    book.put(
        SAYINGS,
        "  band-rides-up-at-the-back:\n",
        "  band-rides-up-at-the-back:\n  - " + phrase + "\n");
  }

  private void until(PackagedService service, String path, Predicate<String> so) throws Exception {
    String last = "";
    for (int looks = 0; looks < 240; looks++) {
      last = told(service, path);
      if (so.test(last)) {
        return;
      }
      Thread.sleep(250);
    }
    throw new AssertionError(last + "\n" + service.log());
  }

  @Test
  void an_own_book_is_served_from_the_first_request_and_a_broken_change_is_told_of_everywhere()
      throws Exception {
    BookCopy book = withPhrase("band wanders skyward");
    try (PackagedService service = PackagedService.start("-Deasewright.rules=" + book.folder())) {
      assertTrue(understands(answer(service)), "first request");
      String sound = book.text(RULE);
      int line = book.put(RULE, "\"band rides up at the back\"", "\"band rides up behind\"");
      until(service, "/rules", page -> page.contains("The changed book has faults"));
      String place = RULE + ":" + line;
      assertTrue(told(service, "/rules").contains(place));
      assertTrue(told(service, "/q/health/ready").contains(place));
      assertEquals("UP", JSON.readTree(told(service, "/q/health/ready")).path("status").asText());
      assertTrue(service.log().contains("The rule book stays as it was."), service.log());
      assertTrue(understands(answer(service)), "the book before answers");
      book.write(RULE, sound);
      until(service, "/rules", page -> !page.contains("The changed book has faults"));
    }
  }

  /** Every rule file is compiled anew, since a sentence all of them use is changed. */
  @Test
  void no_answer_waits_while_a_changed_book_is_compiled() throws Exception {
    BookCopy book = withPhrase("band wanders skyward");
    try (PackagedService service = PackagedService.start("-Deasewright.rules=" + book.folder())) {
      answer(service);
      String hash = answer(service).at("/ruleBook/hash").asText();
      book.put("vocabulary.dsl", "=AnyFitting()", "=AnyFitting( )");
      List<Long> times = new ArrayList<>();
      String now = hash;
      for (int asked = 0; asked < 3000 && now.equals(hash); asked++) {
        long began = System.nanoTime();
        now = answer(service).at("/ruleBook/hash").asText();
        times.add(Duration.ofNanos(System.nanoTime() - began).toMillis());
        Thread.sleep(50);
      }
      assertNotEquals(hash, now, service::log);
      Collections.sort(times);
      // Compiling takes ten seconds and more of a core; an answer that waited for it would too.
      assertTrue(times.get(times.size() - 1) < 5_000, () -> "milliseconds: " + times);
      assertTrue(times.get(times.size() / 2) < 1_000, () -> "milliseconds: " + times);
    }
  }

  @Test
  void a_broken_own_book_and_a_folder_without_one_stop_the_start_and_say_why() {
    BookCopy book = withPhrase("band wanders skyward");
    int line = book.put("catalog/causes/band.yaml", "prior: fairly common", "prior: comon");
    IllegalStateException refused =
        assertThrows(
            IllegalStateException.class,
            () -> PackagedService.start("-Deasewright.rules=" + book.folder()));
    assertTrue(
        refused.getMessage().contains("catalog/causes/band.yaml:" + line), refused.getMessage());
    IllegalStateException none =
        assertThrows(
            IllegalStateException.class,
            () -> PackagedService.start("-Deasewright.rules=" + folder.resolve("nowhere")));
    assertTrue(none.getMessage().contains("holds no rule book"), none.getMessage());
  }

  private record Ran(int code, String out, long seconds) {}

  /** Runs the jar in a folder where nothing else of the project is. */
  private Ran run(String... arguments) throws Exception {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-jar", PackagedService.jar().toAbsolutePath().toString(), "rules"));
    command.addAll(List.of(arguments));
    Path out = folder.resolve("out");
    long began = System.nanoTime();
    Process process =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(out.toFile())
            .start();
    if (!process.waitFor(180, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("It did not end: " + command);
    }
    long seconds = Duration.ofNanos(System.nanoTime() - began).toSeconds();
    return new Ran(process.exitValue(), Files.readString(out), seconds);
  }

  @Test
  void the_jar_alone_checks_a_book_compiles_a_changed_rule_and_runs_its_cases() throws Exception {
    BookCopy book = withPhrase("band wanders skyward");
    String file = book.folder().getFileName().toString();
    book.put(RULE, "  \"take in the band\" fully cures \"band too long\"\n", "");
    assertEquals(0, run("check", file).code());
    Ran page = run("try", file, "band-too-long");
    assertEquals(1, page.code(), page.out());
    assertTrue(page.out().contains("sports-bra/band/band-too-long.md:"), page.out());
    Ran post = run("try", file, "My band wanders skyward behind.");
    assertEquals(0, post.code(), post.out());
    assertTrue(post.out().contains("band wanders skyward"), post.out());
    assertEquals(0, run("new", "sign", "an-invented-sign", file, "--topic", "band").code());
    assertEquals(1, run("check", file).code());
    assertEquals(2, run("check", "nowhere").code());
  }
}
