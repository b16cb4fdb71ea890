package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.clinic.Caller;
import easewright.clinic.Case;
import easewright.clinic.ClinicStore;
import easewright.clinic.RealPostgres;
import easewright.clinic.Round;
import easewright.clinic.StoreAddress;
import easewright.clinic.Story;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.jar.JarOutputStream;
import java.util.stream.IntStream;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whatever was acknowledged outlives SIGKILL, and nothing is there by half. Forty times for the
 * store as shipped, on either engine; a few times for the whole service.
 */
@Tag("long")
class KilledWhileWritingIT {
  private static final int KILLS = 40;
  private static final int KILLS_BETWEEN_LOOKS = 10;
  private static final int SERVICE_KILLS = 5;
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir Path folder;
  private final Random random = new Random(20260301);

  @Test
  void forty_kills_lose_nothing_acknowledged_in_the_folder() throws Exception {
    killWriters(folder.resolve("store").toString());
  }

  @Test
  void forty_kills_lose_nothing_acknowledged_on_the_server() throws Exception {
    killWriters(RealPostgres.emptyDatabase().url());
  }

  private void killWriters(String where) throws Exception {
    String key;
    try (ClinicStore store =
        new ClinicStore(RoundWriter.address(where), Clock.systemUTC(), Duration.ofSeconds(10))) {
      key = store.clinics().open("Thursday sewing circle", "Odile", 30).key().text();
    }
    List<String> acknowledged = new ArrayList<>();
    for (int kill = 1; kill <= KILLS; kill++) {
      int before = acknowledged.size();
      writeUntilKilled(where, key, acknowledged);
      assertTrue(acknowledged.size() > before, "Nothing was written before kill " + kill);
      if (kill % KILLS_BETWEEN_LOOKS == 0) {
        look(where, key, acknowledged);
      }
    }
  }

  /**
   * Starting is most of the time this takes: so the classes are recorded once, as the service's.
   */
  private Path archive() throws IOException, InterruptedException {
    Path archive = folder.resolve("writer.jsa");
    if (!Files.exists(archive)) {
      try (JarOutputStream jar = new JarOutputStream(Files.newOutputStream(writerJar()))) {
        String name = RoundWriter.class.getName().replace('.', '/') + ".class";
        jar.putNextEntry(new ZipEntry(name));
        jar.write(Files.readAllBytes(Path.of("target/test-classes", name)));
      }
      start("-XX:ArchiveClassesAtExit=" + archive, RoundWriter.ONCE, folder.resolve("x").toString())
          .start()
          .waitFor();
    }
    return archive;
  }

  private Path writerJar() {
    return folder.resolve("writer.jar");
  }

  private ProcessBuilder start(String option, String... arguments) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx256m", option));
    command.addAll(List.of("-cp", PackagedService.jar() + File.pathSeparator + writerJar()));
    command.add(RoundWriter.class.getName());
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD);
  }

  private void writeUntilKilled(String where, String key, List<String> acknowledged)
      throws IOException, InterruptedException {
    Process writer = start("-XX:SharedArchiveFile=" + archive(), key, where).start();
    try (BufferedReader lines = writer.inputReader()) {
      long end = 0;
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        acknowledged.add(line);
        if (end == 0) {
          end = System.nanoTime() + random.nextInt(150) * 1_000_000L;
        } else if (System.nanoTime() > end) {
          // By its handle, which leaves the pipe open: what was told is read to the end.
          writer.toHandle().destroyForcibly();
        }
      }
    }
    writer.waitFor();
  }

  private static void look(String where, String key, List<String> acknowledged)
      throws SQLException {
    lookAtRows(RoundWriter.address(where));
    try (ClinicStore store =
        new ClinicStore(RoundWriter.address(where), Clock.systemUTC(), Duration.ofSeconds(10))) {
      Caller caller = store.keys().holder(key).orElseThrow();
      Map<String, Story> stories = new HashMap<>();
      for (Story story : store.clinics().export(caller).cases()) {
        stories.put(story.current().id(), story);
        assertWhole(story);
      }
      for (String line : acknowledged) {
        String[] told = line.split(" ");
        Story story = stories.get(told[1]);
        assertTrue(story != null, "The case is lost: " + line);
        if (told[0].equals("round")) {
          Round round = story.rounds().get(Integer.parseInt(told[2]) - 1);
          assertEquals(told[3], round.fitted().post());
        }
      }
    }
  }

  /** Table and index agree, and each case and round has its line in the audit, and only one. */
  private static void lookAtRows(StoreAddress address) throws SQLException {
    try (Connection plain =
        DriverManager.getConnection(address.url(), address.user(), address.password())) {
      String clinic = texts(plain, "select id from clinics").get(0);
      for (String[] table : new String[][] {{"audit", "done_ms"}, {"cases", "changed_ms"}}) {
        List<String> byTable = texts(plain, "select id from " + table[0] + " order by id");
        List<String> byIndex =
            texts(
                plain,
                "select id from %s where clinic_id = '%s' order by %s"
                    .formatted(table[0], clinic, table[1]));
        assertEquals(new HashSet<>(byTable), new HashSet<>(byIndex), table[0]);
      }
      assertEquals(
          texts(plain, "select case_id from rounds order by case_id"),
          texts(plain, "select case_id from audit where deed = 'ROUND_ADDED' order by case_id"));
      assertEquals(
          texts(plain, "select id from cases order by id"),
          texts(plain, "select case_id from audit where deed = 'CASE_OPENED' order by case_id"));
    }
  }

  private static List<String> texts(Connection plain, String query) throws SQLException {
    try (Statement statement = plain.createStatement();
        ResultSet rows = statement.executeQuery(query)) {
      List<String> texts = new ArrayList<>();
      while (rows.next()) {
        texts.add(rows.getString(1));
      }
      return texts;
    }
  }

  private static void assertWhole(Story story) {
    Case current = story.current();
    assertEquals(current.rounds(), story.rounds().size());
    assertEquals(current.rounds() + 1, current.version());
    assertEquals(
        IntStream.rangeClosed(1, current.rounds()).boxed().toList(),
        story.rounds().stream().map(Round::number).toList());
    for (Round round : story.rounds()) {
      for (JsonNode part : List.of(round.request(), round.fitted().advice())) {
        assertEquals(round.fitted().post(), part.path("first").textValue());
        assertEquals(round.fitted().post(), part.path("last").textValue());
      }
    }
  }

  @Test
  void the_service_killed_while_it_answers_keeps_every_round_it_acknowledged_in_the_folder()
      throws Exception {
    killService("-Deasewright.clinic.store=" + folder.resolve("store"));
  }

  @Test
  void the_service_killed_while_it_answers_keeps_every_round_it_acknowledged_on_the_server()
      throws Exception {
    killService(
        "-Deasewright.clinic.url=" + RealPostgres.emptyDatabase().url(),
        "-Deasewright.clinic.user=postgres",
        "-Deasewright.clinic.password=postgres");
  }

  private void killService(String... store) throws Exception {
    String key = null;
    String cases = null;
    List<String> posts = new ArrayList<>();
    String path = null;
    for (int kill = 0; kill <= SERVICE_KILLS; kill++) {
      try (PackagedService service = PackagedService.start(store)) {
        URI address = service.address();
        if (kill == 0) {
          JsonNode opened =
              send(
                  address, null, "/v1/clinics", "{\"name\": \"Circle\", \"organiser\": \"Odile\"}");
          key = opened.at("/key/key").textValue();
          cases = "/v1/clinics/" + opened.at("/clinic/id").textValue() + "/cases";
          path =
              cases
                  + "/"
                  + send(address, key, cases, "{\"nickname\": \"W\"}").path("id").textValue();
        }
        JsonNode story = send(address, key, path, null);
        List<String> kept = new ArrayList<>();
        story.path("rounds").forEach(round -> kept.add(round.path("post").textValue()));
        assertTrue(kept.containsAll(posts), kept.size() + " of " + posts.size() + " are kept");
        assertEquals(kept.size(), story.at("/case/rounds").intValue());
        story.path("rounds").forEach(round -> assertTrue(round.at("/advice/causes").isArray()));
        if (kill < SERVICE_KILLS) {
          postUntilKilled(service, key, path + "/rounds", kill, posts);
        }
      }
    }
    assertTrue(posts.size() > SERVICE_KILLS, posts.size() + " rounds acknowledged");
  }

  private void postUntilKilled(
      PackagedService service, String key, String path, int kill, List<String> posts)
      throws InterruptedException {
    URI address = service.address();
    Thread killer =
        new Thread(
            () -> {
              try {
                Thread.sleep(400 + random.nextInt(600));
                service.kill();
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            });
    try {
      for (int i = 0; ; i++) {
        String post = "The band rides up at the back, time " + kill + "." + i;
        if (send(address, key, path, "{\"text\": \"" + post + "\"}").has("number")) {
          posts.add(post);
        }
        if (i == 0) {
          killer.start(); // the first text loads the reader, however slow the machine
        }
      }
    } catch (IOException gone) {
      killer.join();
    }
  }

  private static JsonNode send(URI address, String key, String path, String body)
      throws IOException, InterruptedException {
    HttpRequest.Builder request = HttpRequest.newBuilder(address.resolve(path));
    if (key != null) {
      request.header("Authorization", "Bearer " + key);
    }
    if (body != null) {
      request.header("Content-Type", "application/json").POST(BodyPublishers.ofString(body));
    }
    HttpResponse<String> answer =
        HttpClient.newHttpClient().send(request.build(), BodyHandlers.ofString());
    assertTrue(answer.statusCode() < 300, answer.statusCode() + " " + answer.body());
    return JSON.readTree(answer.body());
  }
}
