package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import easewright.packaged.NodePrograms.Ran;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Runs the tests of {@code src/test/browser} in Chromium against a packaged service. */
final class BrowserTests {
  private static final Path FOLDER = Path.of("src/test/browser");
  private static final int MINUTES = 20;

  private BrowserTests() {}

  /** Whether Node.js and Chromium are there; says so when not, and fails in CI. */
  static boolean canRun() throws InterruptedException {
    if (!NodePrograms.canRun()) {
      return false;
    }
    if (chromium().isPresent()) {
      return true;
    }
    String needed = "The desk's tests need Chromium, on Debian: apt-get install chromium";
    if ("true".equals(System.getenv("CI"))) {
      fail(needed);
    }
    System.out.println("Skipped: " + needed);
    return false;
  }

  /** Installs what the tests need, as its lock file says. */
  static void install() throws IOException, InterruptedException {
    NodePrograms.succeeded(NodePrograms.run(FOLDER, Map.of(), 5, "", "npm", "ci"));
  }

  /**
   * Runs a file of tests; every one has to pass.
   *
   * @param suites how many suites it has, so that none is lost unnoticed
   */
  static void pass(PackagedService service, String file, int suites)
      throws IOException, InterruptedException {
    Ran ran = run(service, file, List.of());
    assertTrue(ran.out().contains("# skipped 0"), ran::out);
    assertTrue(ran.out().contains("# suites " + suites), ran::out);
  }

  /** Runs these tests of a file, by the beginnings of their names; every one has to pass. */
  static void passThese(PackagedService service, String file, List<String> names)
      throws IOException, InterruptedException {
    Ran ran = run(service, file, names);
    for (String name : names) {
      Pattern passed = Pattern.compile("(?m)^ *ok \\d+ - " + Pattern.quote(name) + "(?!.*# SKIP)");
      assertTrue(passed.matcher(ran.out()).find(), () -> name + " did not run: " + ran.out());
    }
  }

  private static Ran run(PackagedService service, String file, List<String> names)
      throws IOException, InterruptedException {
    Map<String, String> where =
        Map.of(
            "DESK", service.address().toString(), "CHROMIUM", chromium().orElseThrow().toString());
    List<String> command = new ArrayList<>(List.of("node", "--test", "--test-reporter=tap"));
    names.forEach(name -> command.add("--test-name-pattern=^" + name));
    command.add(file);
    Ran ran = NodePrograms.run(FOLDER, where, MINUTES, "", command.toArray(String[]::new));
    assertTrue(ran.exit() == 0, ran::out);
    return ran;
  }

  private static Optional<Path> chromium() {
    return Stream.of(System.getenv("PATH").split(File.pathSeparator))
        .flatMap(
            folder ->
                List.of("chromium", "chromium-browser").stream().map(name -> Path.of(folder, name)))
        .filter(Files::isExecutable)
        .findFirst();
  }
}
