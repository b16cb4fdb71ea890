package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.packaged.NodePrograms.Ran;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The Debian package on this machine: made, installed, removed, and its service started as its unit
 * says, for systemd itself does not run where tests do.
 */
final class DebianPackage {
  static final Path UNIT = Path.of("/lib/systemd/system/easewright.service");
  static final Path CONFIGURATION = Path.of("/etc/easewright/easewright.conf");
  static final Path STATE = Path.of("/var/lib/easewright");
  static final Path PROGRAMS = Path.of("/usr/lib/easewright");

  /** Says that a test installed it, so that the next may remove it. */
  static final Path OURS = Path.of("/etc/easewright/installed-by-a-test");

  private static final int LONGEST_MINUTES = 3;

  /**
   * What ProtectSystem=strict, PrivateTmp and StateDirectory of the unit come to: nothing can be
   * written but the state and a /tmp of its own.
   */
  private static final String CONFINED =
      """
      mount --make-rprivate / && mount --bind "$0" "$0" && mount -o remount,bind,ro / &&
      mount -t tmpfs -o mode=1777 tmpfs /tmp && cd "$0" && exec "$@"
      """;

  private DebianPackage() {}

  /** Makes the package of what stands in target, and returns its file. */
  static Path build(String version) throws IOException, InterruptedException {
    succeeded("src/packaging/debian/build", version);
    try (Stream<Path> files = Files.list(Path.of("target"))) {
      return files
          .filter(file -> file.getFileName().toString().startsWith("easewright_" + version + "_"))
          .findFirst()
          .orElseThrow();
    }
  }

  /** Installs it or upgrades to it, asking nobody anything; a question would fail. */
  static void install(Path file) throws IOException, InterruptedException {
    Files.createDirectories(OURS.getParent());
    Files.writeString(OURS, "");
    succeeded("dpkg", "--install", file.toString());
  }

  /** Removes it; its configuration and state stay. */
  static void remove() throws IOException, InterruptedException {
    succeeded("dpkg", "--remove", "easewright");
  }

  /** Removes it with all it kept. */
  static void purge() throws IOException, InterruptedException {
    succeeded("dpkg", "--purge", "easewright");
  }

  /** Removes what a test installed, however far it came. */
  static void leaveNothing() throws IOException, InterruptedException {
    if (Files.exists(OURS)) {
      run("dpkg", "--purge", "easewright");
      run("rm", "-rf", OURS.getParent().toString(), STATE.toString());
    }
  }

  /** Whether anything of it is here: the package, or what a removed one left. */
  static boolean isHere() {
    return Stream.of(UNIT, CONFIGURATION, STATE, PROGRAMS).anyMatch(Files::exists);
  }

  /** Starts the service with the unit's command, environment, user and view of the file system. */
  static PackagedService startService() throws IOException, InterruptedException {
    Map<String, List<String>> unit = unit();
    String user = only(unit, "User");
    assertEquals(List.of(STATE.toString()), unit.get("WorkingDirectory"));
    succeeded(
        "install", "-d", "-m", only(unit, "StateDirectoryMode"), "-o", user, STATE.toString());
    List<String> command = new ArrayList<>(List.of("unshare", "--mount", "sh", "-c", CONFINED));
    command.addAll(List.of(STATE.toString(), "setpriv", "--reuid=" + user));
    command.addAll(List.of("--regid=" + only(unit, "Group"), "--clear-groups"));
    command.addAll(List.of("--bounding-set=-all", "--no-new-privs"));
    command.add(only(unit, "ExecStart"));
    ProcessBuilder program = new ProcessBuilder(command);
    program.environment().clear();
    program.environment().put("PATH", "/usr/local/bin:/usr/bin:/bin:/usr/sbin:/sbin");
    program.environment().putAll(variables(unit.get("Environment")));
    program
        .environment()
        .putAll(variables(Files.readAllLines(Path.of(only(unit, "EnvironmentFile")))));
    return PackagedService.begin(program);
  }

  /** Runs a command of the package as a user who owns nothing of it. */
  static Ran asAnybody(String... command) throws IOException, InterruptedException {
    List<String> whole = new ArrayList<>(List.of("setpriv", "--reuid=nobody", "--regid=nogroup"));
    whole.addAll(List.of("--clear-groups", "--"));
    whole.addAll(List.of(command));
    return run(whole.toArray(String[]::new));
  }

  static Ran run(String... command) throws IOException, InterruptedException {
    return NodePrograms.run(
        Path.of("."), Map.of("DEBIAN_FRONTEND", "noninteractive"), LONGEST_MINUTES, "", command);
  }

  static Ran succeeded(String... command) throws IOException, InterruptedException {
    return NodePrograms.succeeded(run(command));
  }

  /** The unit's settings of whatever section; some are written more than once. */
  private static Map<String, List<String>> unit() throws IOException {
    Map<String, List<String>> settings = new TreeMap<>();
    for (String line : Files.readAllLines(UNIT)) {
      String[] parts = line.split("=", 2);
      if (parts.length == 2 && !line.startsWith("#")) {
        settings.computeIfAbsent(parts[0], name -> new ArrayList<>()).add(parts[1]);
      }
    }
    return settings;
  }

  private static String only(Map<String, List<String>> unit, String name) {
    assertEquals(1, unit.get(name).size(), name);
    return unit.get(name).get(0);
  }

  /** NAME=value or NAME="value" on each line (systemd.exec(5), EnvironmentFile). */
  private static Map<String, String> variables(List<String> lines) {
    Map<String, String> variables = new TreeMap<>();
    for (String line : lines) {
      if (!line.isBlank() && !line.startsWith("#")) {
        String[] parts = line.split("=", 2);
        variables.put(parts[0], parts[1].replaceAll("^\"(.*)\"$", "$1"));
      }
    }
    return variables;
  }
}
