package easewright.packaged;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The command line gives what the contract's examples record and the README shows. The port the
 * service would take is taken already, a worker of batches has no settings to read, and the
 * clinics' file is damaged, so that a run which opened any of them would fail or say so.
 */
@Tag("long")
class CommandLineIT {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String EXAMPLES = "openapi/examples/";

  @TempDir Path folder;

  private record Ran(int code, String out, String err) {}

  private Ran run(String input, String... arguments) throws Exception {
    File in = Files.writeString(folder.resolve("in"), input).toFile();
    File out = folder.resolve("out").toFile();
    File err = folder.resolve("err").toFile();
    Path store = Files.createDirectories(folder.resolve("store"));
    Files.writeString(store.resolve("clinics.db"), "This is no store.");
    try (ServerSocket taken = new ServerSocket(0)) {
      List<String> command = new ArrayList<>();
      command.add("target/easewright");
      command.add("-Deasewright.public-address=http://localhost:8080");
      command.add("-Dquarkus.http.port=" + taken.getLocalPort());
      command.add("-Dquarkus.management.port=" + taken.getLocalPort());
      command.add("-Deasewright.clinic.store=" + store);
      command.addAll(List.of(arguments));
      ProcessBuilder program =
          new ProcessBuilder(command).redirectInput(in).redirectOutput(out).redirectError(err);
      program
          .environment()
          .putAll(
              Map.of(
                  "EASEWRIGHT_BATCH_BROKERS", "127.0.0.1:1",
                  "EASEWRIGHT_BATCH_CLIENT_CONFIG", "nowhere.properties"));
      Process process = program.start();
      if (!process.waitFor(90, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new AssertionError("It did not end: " + command);
      }
      return new Ran(
          process.exitValue(), Files.readString(out.toPath()), Files.readString(err.toPath()));
    }
  }

  private static JsonNode recorded(String name) throws IOException {
    return JSON.readTree(Path.of(EXAMPLES + name + ".answer.json").toFile());
  }

  @Test
  void a_fitting_in_a_file_is_answered_as_the_readme_shows_and_nothing_else_is_printed()
      throws Exception {
    Ran ran = run("", "fit", EXAMPLES + "first-fitting.json");
    assertEquals("", ran.err());
    assertEquals(0, ran.code());
    String begins = ran.out().substring(0, ran.out().indexOf("\n---")).strip();
    String shown = "> " + begins.replace("\n", "\n> ").replace("> \n", ">\n");
    assertTrue(Files.readString(Path.of("README.md")).contains(shown), shown);
  }

  @Test
  void a_fitting_from_standard_input_is_answered_as_recorded_in_one_line_of_json()
      throws Exception {
    Ran ran = run(Files.readString(Path.of(EXAMPLES + "one-sign.json")), "fit", "--json", "-");
    assertEquals(0, ran.code(), ran.err());
    assertEquals(1, ran.out().lines().count());
    assertEquals(recorded("one-sign").get("causes"), JSON.readTree(ran.out()).get("causes"));
  }

  @Test
  void a_post_in_plain_words_is_answered_for_the_pattern_named() throws Exception {
    Path post =
        Files.write(
            folder.resolve("post"), "My band rides up at the back. What now?\n".getBytes(UTF_8));
    Ran ran = run("", "fit", "--json", "--pattern", "quillmere-top", post.toString());
    assertEquals(0, ran.code(), ran.err());
    JsonNode answer = JSON.readTree(ran.out());
    assertEquals("band-rides-up-at-the-back", answer.at("/understood/signs/0/id").textValue());
    assertEquals("quillmere-top", answer.at("/understood/sheet").textValue(), ran.out());
  }

  @Test
  void a_reply_calls_her_by_name_in_the_tone_asked_for() throws Exception {
    Ran ran =
        run(
            Files.readString(Path.of(EXAMPLES + "one-sign.json")),
            "fit",
            "--text",
            "--nickname",
            "Fern",
            "--voice",
            "plain",
            "-");
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().startsWith("Hello Fern,"), ran.out());
    assertEquals(2, run("{}", "fit", "--voice", "loud", "-").code());
    assertEquals(2, run("{}", "fit", "--lines", "--voice", "plain", "-").code());
  }

  @Test
  void a_short_answer_is_plain_text_of_at_most_120_words() throws Exception {
    Ran ran = run("", "fit", "--text", EXAMPLES + "first-fitting.json");
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().strip().split("\\s+").length <= 120, ran.out());
    assertTrue(ran.out().contains("1 1/4 in") && !ran.out().contains("**"), ran.out());
  }

  @Test
  void a_faulty_fitting_is_told_on_standard_error_and_ends_with_2() throws Exception {
    Ran ran = run("", "fit", EXAMPLES + "impossible-body.json");
    assertEquals(2, ran.code());
    assertEquals("", ran.out());
    for (JsonNode fault : recorded("impossible-body").get("faults")) {
      assertTrue(ran.err().contains(fault.get("problem").textValue()), ran.err());
      assertTrue(ran.err().contains(fault.get("remedy").textValue()), ran.err());
    }
    assertFalse(ran.err().contains("Exception"), ran.err());
  }

  @Test
  void a_file_that_is_not_there_ends_with_1() throws Exception {
    Ran ran = run("", "fit", folder.resolve("nowhere.json").toString());
    assertEquals(1, ran.code());
    assertEquals("", ran.out());
    assertTrue(ran.err().contains("nowhere.json"), ran.err());
  }

  @Test
  void arguments_that_ask_nothing_known_end_with_2_and_help_with_0() throws Exception {
    assertEquals(2, run("", "fit", "--colour", "x").code());
    assertEquals(2, run("", "fit", "--json", "--markdown", "x").code());
    Ran named = run("{}", "fit", "--pattern", "quillmere-top", "-");
    assertEquals(2, named.code());
    assertTrue(named.err().contains("--pattern"), named.err());
    Ran help = run("", "fit", "--help");
    assertEquals(0, help.code());
    assertTrue(help.out().contains("--pattern"), help.out());
  }

  @Test
  void a_fitting_a_line_is_answered_a_line_as_over_http() throws Exception {
    Ran ran = run("", "fit", "--lines", EXAMPLES + "several-fittings.ndjson");
    assertEquals(2, ran.code(), ran.err()); // two of its lines are refused
    List<String> recorded =
        Files.readAllLines(Path.of(EXAMPLES + "several-fittings.answer.ndjson"));
    List<String> lines = ran.out().lines().toList();
    assertEquals(recorded.size(), lines.size());
    for (int i = 0; i < lines.size(); i++) {
      JsonNode expected = JSON.readTree(recorded.get(i));
      JsonNode said = JSON.readTree(lines.get(i));
      assertEquals(expected.get("causes"), said.get("causes"));
      assertEquals(expected.get("faults"), said.get("faults"));
      assertEquals(expected.get("line"), said.get("line"));
    }
  }
}
