package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.packaged.NodePrograms.Ran;
import easewright.photo.TestPictures;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;

/**
 * The life of the Debian package on one machine: installed, asked, upgraded with its store, removed
 * and purged (Debian Policy 6.8 and 10.7). It installs for real, so it wants root and a machine
 * without the package.
 */
@Tag("long")
@EnabledIf("canRun")
class DebianPackageIT {
  private static final Map<String, String> TOOLS =
      Map.of(
          "/usr/bin/dpkg-shlibdeps", "dpkg-dev",
          "/usr/sbin/adduser", "adduser",
          "/usr/bin/systemd-analyze", "systemd");

  /** A tenth of a point of systemd's exposure, of 100; the unit has 15. */
  private static final int MOST_EXPOSED = 20;

  static boolean canRun() throws Exception {
    if (Files.exists(DebianPackage.OURS)) {
      DebianPackage.leaveNothing(); // of a test that was cut short
    }
    List<String> missing = new ArrayList<>();
    TOOLS.forEach(
        (file, debian) -> {
          if (!Files.isExecutable(Path.of(file))) {
            missing.add("apt-get install " + debian);
          }
        });
    if (!"root".equals(System.getProperty("user.name"))) {
      missing.add("to be root");
    }
    if (DebianPackage.isHere()) {
      missing.add("a machine without the package, or what it left: dpkg --purge easewright");
    }
    if (missing.isEmpty()) {
      return true;
    }
    String needed = "Installing the Debian package needs Debian and " + String.join(", ", missing);
    if ("true".equals(System.getenv("CI"))) {
      fail(needed);
    }
    System.out.println("Skipped: " + needed);
    return false;
  }

  @AfterEach
  void leaveNothing() throws Exception {
    DebianPackage.leaveNothing();
  }

  @Test
  void it_is_installed_upgraded_with_its_store_and_removed() throws Exception {
    DebianPackage.install(DebianPackage.build("0.0.9"));
    assertConfined();
    assertCommandLineWorks();
    Files.writeString(
        DebianPackage.CONFIGURATION,
        "QUARKUS_HTTP_PORT=0\nQUARKUS_MANAGEMENT_PORT=0\nEASEWRIGHT_JVM=\"-Xms96m -Xmx192m\"\n",
        StandardOpenOption.APPEND);
    String configured = Files.readString(DebianPackage.CONFIGURATION);
    AskedClinic clinic;
    try (PackagedService former = DebianPackage.startService()) {
      assertAnswers(former);
      assertHealthIsSeenByTheContainer(former);
      clinic = AskedClinic.open(former.address());
      assertEquals(201, clinic.add().statusCode(), former.log());
      // Pictures are read by system libraries that the trimmed runtime is linked with.
      HttpResponse<String> photo = clinic.addPhoto(TestPictures.jpeg(64, 48));
      assertEquals(201, photo.statusCode(), photo.body());
    }

    Path file = DebianPackage.build("0.1.0");
    assertHoldsWhatAReleaseNeeds(file);
    DebianPackage.install(file);
    assertEquals("0.1.0", installedVersion());
    assertEquals(configured, Files.readString(DebianPackage.CONFIGURATION));
    assertStartIsRecorded();
    try (PackagedService upgraded = DebianPackage.startService()) {
      clinic.at(upgraded.address());
      assertEquals(201, clinic.add().statusCode(), upgraded.log());
      assertEquals(List.of(), clinic.lost());
      assertEquals(2, clinic.acknowledged());
      assertEquals(200, upgraded.readiness());
    }

    DebianPackage.remove();
    assertFalse(Files.exists(DebianPackage.PROGRAMS), "programs are gone");
    assertFalse(Files.exists(Path.of("/usr/bin/easewright")));
    assertTrue(Files.exists(DebianPackage.STATE.resolve("clinics.db")), "the store stays");
    assertTrue(Files.exists(DebianPackage.CONFIGURATION), "the configuration stays");
    DebianPackage.purge();
    assertFalse(DebianPackage.isHere(), "all it kept is gone");
    assertEquals(2, DebianPackage.run("getent", "passwd", "easewright").exit(), "its user is gone");
  }

  /** Asked of the file, since a machine may be told to install no documents. */
  private static void assertHoldsWhatAReleaseNeeds(Path file) throws Exception {
    String contents = DebianPackage.succeeded("dpkg-deb", "--contents", file.toString()).out();
    for (String document :
        List.of("LICENSE", "copyright", "easewright-sbom.json", "release-notes.md", "running.md")) {
      assertTrue(contents.contains("./usr/share/doc/easewright/" + document + "\n"), contents);
    }
    assertTrue(contents.contains("./usr/share/easewright/rules/README.md\n"), contents);
  }

  private static String installedVersion() throws Exception {
    return DebianPackage.succeeded("dpkg-query", "-W", "-f", "${Version}", "easewright").out();
  }

  /** Without the archive, or with one of another jar, Java refuses to start when told to share. */
  private static void assertStartIsRecorded() throws Exception {
    Ran ran = DebianPackage.asAnybody("easewright", "-Xshare:on", "--help");
    assertEquals(0, ran.exit(), ran.out() + ran.err());
  }

  private static void assertCommandLineWorks() throws Exception {
    assertStartIsRecorded();
    Ran fit =
        DebianPackage.asAnybody("easewright", "fit", "--text", DebianPackage.PROGRAMS + FIRST);
    assertEquals(0, fit.exit(), fit.err());
    assertTrue(fit.out().startsWith("Hi, thanks for the number, 2 in"), fit.out()); // as in README
    // Rules are compiled, by a compiler that reads the trimmed runtime's classes.
    Ran rules =
        DebianPackage.asAnybody(
            "easewright", "rules", "try", "/usr/share/easewright/rules", "The straps slip off.");
    assertEquals(0, rules.exit(), rules.err());
    assertTrue(rules.out().contains("straps-slip-off"), rules.out());
  }

  private static final String FIRST = "/first-questions/first-fitting.json";

  private static void assertAnswers(PackagedService service) throws Exception {
    HttpResponse<String> answer =
        AskedClinic.nobodys(service.address())
            .sendTo(
                "/v1/fittings", Files.readString(Path.of("openapi/examples/first-fitting.json")));
    assertEquals(200, answer.statusCode(), answer.body());
    assertTrue(answer.body().contains("\"band-too-long\""), answer.body()); // as in README
  }

  /** The container's health check, which needs no container. */
  private static void assertHealthIsSeenByTheContainer(PackagedService service) throws Exception {
    String file = Files.readString(Path.of("src/packaging/container/Containerfile"));
    Matcher check = Pattern.compile("HEALTHCHECK [^\\[]*CMD (\\[.*])").matcher(file);
    assertTrue(check.find(), file);
    String[] command = new ObjectMapper().readValue(check.group(1), String[].class);
    int port = service.management().getPort();
    command[2] = command[2].replace("/9080", "/" + port).replace("q/health/ready", "q/nowhere");
    assertEquals(1, DebianPackage.run(command).exit(), "404 is not well");
    command[2] = command[2].replace("q/nowhere", "q/health/ready");
    DebianPackage.succeeded(command);
  }

  /** What others may read or write of it, and what systemd thinks of the unit. */
  private static void assertConfined() throws Exception {
    assertEquals(
        "rw-r-----",
        PosixFilePermissions.toString(
            Files.getPosixFilePermissions(DebianPackage.CONFIGURATION))); // it may hold secrets
    try (Stream<Path> files = Files.walk(DebianPackage.PROGRAMS)) {
      for (Path file : (Iterable<Path>) files::iterator) {
        assertEquals("root", Files.getOwner(file).getName(), file.toString());
      }
    }
    String unit = DebianPackage.UNIT.toString();
    Ran verified = DebianPackage.run("systemd-analyze", "verify", unit);
    assertEquals("", verified.err());
    assertEquals(0, verified.exit());
    DebianPackage.succeeded(
        "systemd-analyze", "security", "--offline=true", "--threshold=" + MOST_EXPOSED, unit);
  }
}
