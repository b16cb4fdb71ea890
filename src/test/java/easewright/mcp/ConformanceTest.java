package easewright.mcp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.abort;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.lang.reflect.Method;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The protocol's own conformance runner ({@code @modelcontextprotocol/conformance}, revision
 * 2025-11-25) against the running service. Needs Node.js and, once, its package registry; otherwise
 * reports this and is skipped.
 */
@Tag("long")
@QuarkusTest
class ConformanceTest {
  // The newest that runs on Node.js 20; later ones need 22.
  private static final String RUNNER = "@modelcontextprotocol/conformance@0.1.13";
  private static final Path FOLDER = Path.of("target", "conformance-0.1.13");
  private static final Path SCRIPT =
      FOLDER.resolve("node_modules/@modelcontextprotocol/conformance/dist/index.js");

  /** These require tools, resources and prompts made for the runner. */
  private static final Set<String> NEED_FIXTURES =
      Set.of(
          "completion-complete",
          "elicitation-sep1034-defaults",
          "elicitation-sep1330-enums",
          "json-schema-2020-12",
          "prompts-get-embedded-resource",
          "prompts-get-simple",
          "prompts-get-with-args",
          "prompts-get-with-image",
          "resources-read-binary",
          "resources-read-text",
          "resources-subscribe",
          "resources-templates-read",
          "resources-unsubscribe",
          "server-sse-polling",
          "tools-call-audio",
          "tools-call-elicitation",
          "tools-call-embedded-resource",
          "tools-call-error",
          "tools-call-image",
          "tools-call-mixed-content",
          "tools-call-sampling",
          "tools-call-simple-text",
          "tools-call-with-logging",
          "tools-call-with-progress");

  private static final Pattern RESULT = Pattern.compile("Passed: (\\d+)/(\\d+), (\\d+) failed");

  @TestHTTPResource("/mcp")
  URI address;

  private record Run(int status, String output) {}

  @BeforeAll
  static void fetchRunner() throws IOException, InterruptedException {
    if (!Files.exists(SCRIPT)) {
      Files.createDirectories(FOLDER);
      Run fetched =
          run(
              List.of(
                  "npm",
                  "install",
                  "--prefix",
                  FOLDER.toString(),
                  "--no-save",
                  "--no-audit",
                  "--no-package-lock",
                  "--ignore-scripts",
                  RUNNER));
      if (fetched.status() != 0) {
        skip("the runner cannot be fetched with npm (Node.js)");
      }
    }
    if (run(List.of("node", SCRIPT.toString(), "list")).status() != 0) {
      skip("the runner does not start; it needs Node.js 20 or newer");
    }
  }

  private static void skip(String why) {
    System.err.println("SKIPPED, the protocol's conformance is not proved here: " + why + ".");
    abort(why);
  }

  /**
   * Scenarios by the runner's names, with their sections; each covers requirements of revision
   * 2025-11-25.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "server-initialize", // basic/lifecycle
        "ping", // basic/utilities/ping
        "logging-set-level", // server/utilities/logging
        "tools-list", // server/tools
        "resources-list", // server/resources
        "prompts-list", // server/prompts
        "server-sse-multiple-streams", // basic/transports, "Multiple Connections"
        "dns-rebinding-protection" // basic/transports, "Security Warning"
      })
  void the_service_conforms(String scenario) throws IOException, InterruptedException {
    Run run =
        run(List.of("node", SCRIPT.toString(), "server", "--url", local(), "--scenario", scenario));
    Matcher result = RESULT.matcher(run.output());
    assertTrue(result.find(), run.output());
    assertEquals(0, run.status(), run.output());
    assertTrue(Integer.parseInt(result.group(1)) > 0, run.output());
    assertEquals(result.group(2), result.group(1), run.output());
  }

  /** A newer runner's scenarios must be added to one list or the other. */
  @Test
  void every_scenario_is_either_run_or_known_to_need_what_is_not_here()
      throws IOException, InterruptedException {
    Set<String> named = new TreeSet<>(NEED_FIXTURES);
    for (Method method : ConformanceTest.class.getDeclaredMethods()) {
      ValueSource values = method.getAnnotation(ValueSource.class);
      if (values != null) {
        named.addAll(List.of(values.strings()));
      }
    }
    String list = run(List.of("node", SCRIPT.toString(), "list")).output();
    Set<String> offered = new TreeSet<>();
    list.lines()
        .takeWhile(line -> !line.startsWith("Client scenarios"))
        .filter(line -> line.startsWith("  - "))
        .forEach(line -> offered.add(line.substring(4).strip()));
    assertEquals(named, offered);
  }

  /** The rebinding scenario is for addresses with a local name. */
  private String local() {
    return "http://localhost:" + address.getPort() + address.getPath();
  }

  private static Run run(List<String> command) throws IOException, InterruptedException {
    Path output = Files.createTempFile("conformance", ".txt");
    try {
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(output.toFile())
              .start();
      if (!process.waitFor(2, TimeUnit.MINUTES)) {
        process.destroyForcibly();
        return new Run(-1, "no end within two minutes");
      }
      return new Run(process.exitValue(), Files.readString(output, StandardCharsets.UTF_8));
    } catch (IOException notInstalled) {
      return new Run(-1, notInstalled.getMessage());
    } finally {
      Files.deleteIfExists(output);
    }
  }
}
