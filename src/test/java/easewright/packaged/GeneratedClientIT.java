package easewright.packaged;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import easewright.packaged.NodePrograms.Ran;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;

/**
 * The Java client that OpenAPI Generator makes of a running service's contract compiles, and asks
 * what the contract's examples ask. Without {@code -Plong}, fetch the generator first: {@code mvn
 * -Plong dependency:copy@generator}.
 */
@Tag("long")
@EnabledIf("canRun")
class GeneratedClientIT {
  private static final Path GENERATOR = Path.of("target/generator/openapi-generator-cli.jar");
  private static final Path FOLDER = Path.of("target/generator/java");
  private static final Path CLASSES = FOLDER.resolve("classes");
  private static final String OPTIONS =
      "invokerPackage=client,apiPackage=client.api,modelPackage=client.model,"
          + "openApiNullable=false,useJakartaEe=true,containerDefaultToNull=true";

  /** Reads each example as the client's class, and sends what the client makes of it. */
  private static final String EVERY_EXAMPLE =
      """
      import client.ApiClient;
      import client.api.*;
      import client.model.*;
      import java.nio.file.*;

      public class EveryExample {
        public static void main(String... files) throws Exception {
          ApiClient service = new ApiClient();
          service.updateBaseUri(files[0]);
          for (int i = 1; i < files.length; i++) {
            Path file = Path.of(files[i]);
            String name = file.getFileName().toString();
            String text = Files.readString(file);
            if (name.startsWith("cut-plan")) {
              new PlansApi(service).planCut(read(text, CutRequest.class), "full");
            } else if (name.startsWith("size-check")) {
              new ChecksApi(service).checkSize(read(text, SizeQuestion.class), "full");
            } else if (name.startsWith("cloth-check")) {
              new ChecksApi(service).checkCloth(read(text, ClothQuestion.class), "full");
            } else {
              Answer answer =
                  new FittingsApi(service).answerFitting(read(text, Fitting.class), null, "full");
              new FittingsApi(service).answerFitting(answer.getSoFar(), null, null);
            }
            System.out.println(name);
          }
        }

        private static <T> T read(String text, Class<T> type) throws Exception {
          return ApiClient.createDefaultObjectMapper().readValue(text, type);
        }
      }
      """;

  private static final String EXAMPLES =
      "first-fitting second-fitting whatever-was-tried one-sign measurements-only red-flag"
          + " cloth-too-firm without-a-sheet told-in-words size-check-inches size-check-sheet"
          + " size-check-label size-check-mixed cloth-check-layers cloth-check-turned"
          + " cloth-check-elastic cut-plan-whole cut-plan-mixed cut-plan-recut";

  private static PackagedService service;

  static boolean canRun() {
    if (!Files.exists(GENERATOR) && "true".equals(System.getenv("CI"))) {
      fail("There is no " + GENERATOR + ".");
    }
    return Files.exists(GENERATOR);
  }

  @BeforeAll
  static void generate() throws Exception {
    service = PackagedService.start();
    Path contract = Files.createDirectories(FOLDER).resolve("contract.json");
    HttpRequest request =
        HttpRequest.newBuilder(service.address().resolve("/openapi-3.0.json")).build();
    HttpClient.newHttpClient().send(request, BodyHandlers.ofFile(contract));
    succeeded(
        "java",
        "-jar",
        GENERATOR.toString(),
        "generate",
        "--input-spec=" + contract,
        "--generator-name=java",
        "--library=native",
        "--output=" + FOLDER,
        "--additional-properties=" + OPTIONS);
    Path every = Files.writeString(FOLDER.resolve("EveryExample.java"), EVERY_EXAMPLE, UTF_8);
    List<String> compile =
        new ArrayList<>(List.of("javac", "-nowarn", "-proc:none", "-d", CLASSES.toString()));
    compile.addAll(
        List.of("-cp", classPath(), every.toString(), "src/examples/java/MakeAlong.java"));
    try (Stream<Path> files = Files.walk(FOLDER.resolve("src/main/java"))) {
      files.map(Path::toString).filter(file -> file.endsWith(".java")).forEach(compile::add);
    }
    succeeded(compile.toArray(String[]::new));
  }

  @AfterAll
  static void stop() {
    if (service != null) {
      service.close();
    }
  }

  /**
   * The client needs Jackson, Jakarta's annotations and an HTTP client's forms; tests have them.
   */
  private static String classPath() {
    return System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
  }

  private static String succeeded(String... command) throws IOException, InterruptedException {
    Ran ran = NodePrograms.run(Path.of("."), Map.of(), 5, "", command);
    assertEquals(0, ran.exit(), () -> ran.err() + ran.out());
    return ran.out();
  }

  private static List<String> run(String program, List<String> arguments) throws Exception {
    List<String> command =
        new ArrayList<>(List.of("java", "-cp", CLASSES + ":" + classPath(), program));
    command.add(service.address().toString());
    command.addAll(arguments);
    return succeeded(command.toArray(String[]::new)).lines().toList();
  }

  @Test
  void it_asks_what_every_example_asks() throws Exception {
    List<String> examples =
        Arrays.stream(EXAMPLES.split(" "))
            .map(name -> "openapi/examples/" + name + ".json")
            .toList();
    assertEquals(examples.size(), run("EveryExample", examples).size());
  }

  @Test
  void the_example_program_goes_from_tape_to_toile() throws Exception {
    List<String> told = run("MakeAlong", List.of());
    for (String part :
        List.of(
            "Size to cut: 75",
            "To buy: ",
            "Step: Sew the ",
            "Likely: band too long",
            "Change: ",
            "Then: ",
            "Refused: {")) {
      assertTrue(told.stream().anyMatch(line -> line.startsWith(part)), part + told);
    }
  }
}
