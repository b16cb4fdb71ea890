package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The example programs for Node.js, installed and built as their reader would. */
final class NodePrograms {
  static final Path FOLDER = Path.of("src/examples/typescript");
  private static final Path OUTPUT = Path.of("target/examples");
  private static final int LEAST_NODE = 18;
  static final String NEEDED =
      "The TypeScript examples need Node.js "
          + LEAST_NODE
          + " or newer and npm, on Debian: apt-get install nodejs npm";

  private NodePrograms() {}

  /** How a program ended and what it wrote. */
  record Ran(int exit, String out, String err) {}

  /** Whether Node.js and npm are there; says so when not, and fails in CI. */
  static boolean canRun() throws InterruptedException {
    if (installed()) {
      return true;
    }
    if ("true".equals(System.getenv("CI"))) {
      fail(NEEDED);
    }
    System.out.println("Skipped: " + NEEDED);
    return false;
  }

  /** Installs the packages, generates the types and compiles. */
  static void build() throws IOException, InterruptedException {
    succeeded(run("", "npm", "ci"));
    succeeded(run("", "npm", "run", "build"));
  }

  /** Runs a command in the examples' folder for at most five minutes. */
  static Ran run(String in, String... command) throws IOException, InterruptedException {
    return run(FOLDER, Map.of(), 5, in, command);
  }

  /** Runs a command with more in its environment. */
  static Ran run(
      Path folder, Map<String, String> environment, int minutes, String in, String... command)
      throws IOException, InterruptedException {
    Files.createDirectories(OUTPUT);
    Path input = Files.writeString(Files.createTempFile(OUTPUT, "program", ".in"), in);
    Path out = Files.createTempFile(OUTPUT, "program", ".out");
    Path err = Files.createTempFile(OUTPUT, "program", ".err");
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectInput(input.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile());
    builder.environment().putAll(environment);
    Process process = builder.start();
    if (!process.waitFor(minutes, TimeUnit.MINUTES)) {
      process.destroyForcibly();
      fail("Still running after " + minutes + " minutes: " + String.join(" ", command));
    }
    return new Ran(process.exitValue(), Files.readString(out), Files.readString(err));
  }

  static Ran succeeded(Ran ran) {
    assertEquals(0, ran.exit(), () -> ran.out() + ran.err());
    return ran;
  }

  private static boolean installed() throws InterruptedException {
    try {
      Matcher version =
          Pattern.compile("v(\\d+)\\..*", Pattern.DOTALL)
              .matcher(run("", "node", "--version").out());
      return version.matches()
          && Integer.parseInt(version.group(1)) >= LEAST_NODE
          && run("", "npm", "--version").exit() == 0;
    } catch (IOException e) {
      return false;
    }
  }
}
