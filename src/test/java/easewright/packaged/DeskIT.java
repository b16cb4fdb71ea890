package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import easewright.packaged.NodePrograms.Ran;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;

/**
 * The desk in Chromium: with scripts, without, by keyboard, and held against WCAG 2.2 AA (W3C
 * Recommendation of 5 October 2023) by axe-core in light and dark, at 360 and 1280 px. What is
 * checked stands in {@code src/test/browser/desk.test.mjs}.
 */
@EnabledIf("easewright.packaged.DeskIT#canRun")
class DeskIT {
  private static final Path FOLDER = Path.of("src/test/browser");
  private static final int MINUTES = 20;
  private static PackagedService service;

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

  @BeforeAll
  static void installAndStart() throws Exception {
    NodePrograms.succeeded(NodePrograms.run(FOLDER, Map.of(), 5, "", "npm", "ci"));
    service = PackagedService.start();
  }

  @AfterAll
  static void stop() {
    if (service != null) {
      service.close();
    }
  }

  @Test
  void every_story_of_the_desk_goes_well_in_a_browser_and_every_page_is_accessible()
      throws Exception {
    Ran ran = stories();

    assertTrue(ran.exit() == 0, ran::out);
    assertTrue(ran.out().contains("# skipped 0"), ran::out);
    assertTrue(ran.out().contains("# suites 3"), ran::out);
  }

  private static Ran stories() throws IOException, InterruptedException {
    Map<String, String> where =
        Map.of(
            "DESK", service.address().toString(), "CHROMIUM", chromium().orElseThrow().toString());
    return NodePrograms.run(
        FOLDER, where, MINUTES, "", "node", "--test", "--test-reporter=tap", "desk.test.mjs");
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
