package easewright;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Dependencies point one way, and frameworks stay where they belong. */
class ArchitectureTest {
  private static final JavaClasses MAIN =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("easewright");

  /** Each package with those it may know, itself aside. */
  private static final Map<String, List<String>> KNOWS =
      Map.ofEntries(
          Map.entry("deadline", List.of()),
          Map.entry("wording", List.of()),
          Map.entry("measure", List.of("wording")),
          Map.entry("naming", List.of()),
          Map.entry("layout", List.of("deadline")),
          Map.entry("cloth", List.of("measure")),
          Map.entry("body", List.of("measure", "cloth")),
          Map.entry("size", List.of("measure")),
          Map.entry("pattern", List.of("deadline", "measure", "cloth", "body", "size")),
          Map.entry(
              "rulebook",
              List.of(
                  "deadline", "measure", "naming", "cloth", "body", "size", "pattern", "wording")),
          Map.entry("handbook", List.of("rulebook")),
          Map.entry(
              "diagnosis",
              List.of("wording", "measure", "cloth", "body", "size", "pattern", "rulebook")),
          Map.entry("reply", List.of("diagnosis")),
          Map.entry("clinic", List.of("deadline", "diagnosis", "pattern")),
          Map.entry(
              "check",
              List.of(
                  "wording",
                  "measure",
                  "cloth",
                  "body",
                  "size",
                  "pattern",
                  "rulebook",
                  "diagnosis")),
          Map.entry(
              "plan",
              List.of(
                  "wording",
                  "measure",
                  "layout",
                  "cloth",
                  "size",
                  "pattern",
                  "rulebook",
                  "diagnosis")));

  @Test
  void every_package_knows_only_those_below_it() {
    KNOWS.forEach(
        (name, below) ->
            noClasses()
                .that()
                .resideInAPackage("easewright." + name + "..")
                .should()
                .dependOnClassesThat(
                    resideInAPackage("easewright..")
                        .and(not(resideInAPackage("easewright." + name + "..")))
                        .and(
                            not(
                                resideInAnyPackage(
                                    below.stream()
                                        .map(other -> "easewright." + other + "..")
                                        .toArray(String[]::new)))))
                .check(MAIN));
  }

  @Test
  void nothing_knows_the_command_line() {
    noClasses()
        .that()
        .resideOutsideOfPackage("easewright.cli..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("easewright.cli..")
        .check(MAIN);
  }

  /** So nobody can make it ask an address of theirs (OWASP API7:2023). */
  @Test
  void the_service_asks_nobody_anything_over_the_network() {
    noClasses()
        .that()
        .resideInAPackage("easewright..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.net.http..", "javax.script..", "io.vertx.ext.web.client..")
        .orShould()
        .dependOnClassesThat()
        .haveNameMatching(
            "java\\.net\\.(URL|URLConnection|HttpURLConnection|Socket)"
                + "|io\\.vertx\\.core\\.http\\.HttpClient")
        .check(MAIN);
  }

  /** The guard stands before everything and looks into nothing. */
  @Test
  void the_guard_knows_the_endpoints_alone_and_nothing_knows_the_guard() {
    noClasses()
        .that()
        .resideInAPackage("easewright.guard..")
        .should()
        .dependOnClassesThat(
            resideInAPackage("easewright..")
                .and(not(resideInAnyPackage("easewright.guard..", "easewright.api.."))))
        .check(MAIN);
    noClasses()
        .that()
        .resideOutsideOfPackage("easewright.guard..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("easewright.guard..")
        .check(MAIN);
  }

  @Test
  void nothing_knows_the_desk() {
    noClasses()
        .that()
        .resideOutsideOfPackage("easewright.desk..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("easewright.desk..")
        .check(MAIN);
  }

  @Test
  void only_the_rule_book_touches_the_engine() {
    noClasses()
        .that()
        .resideInAPackage("easewright..")
        .and()
        .resideOutsideOfPackages("easewright.rulebook..", "easewright.rules..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("org.kie..", "org.drools..")
        .check(MAIN);
  }

  /** The facts the rules see are plain records, so that a rule can be tried without the engine. */
  @Test
  void facts_know_nothing_of_the_engine() {
    classes()
        .that()
        .resideInAPackage("easewright.rulebook.facts..")
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage("java..", "easewright.rulebook.facts..")
        .check(MAIN);
  }

  @Test
  void inference_knows_nothing_of_garments_and_rules() {
    classes()
        .that()
        .resideInAPackage("easewright.diagnosis.inference..")
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(
            "java..", "easewright.diagnosis.inference..", "org.apache.commons.math3..")
        .check(MAIN);
  }

  @Test
  void only_the_api_touches_the_web() {
    noClasses()
        .that()
        .resideInAPackage("easewright..")
        .and()
        .resideOutsideOfPackages("easewright.api..", "easewright.desk..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("jakarta.ws.rs..")
        .check(MAIN);
  }

  @Test
  void only_assistants_tools_touch_their_protocol_and_nothing_knows_them() {
    noClasses()
        .that()
        .resideInAPackage("easewright..")
        .and()
        .resideOutsideOfPackage("easewright.mcp..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("io.quarkiverse.mcp..", "easewright.mcp..")
        .check(MAIN);
    noClasses()
        .that()
        .resideInAPackage("easewright.mcp..")
        .should()
        .dependOnClassesThat(
            resideInAPackage("easewright..")
                .and(not(resideInAnyPackage("easewright.mcp..", "easewright.api.."))))
        .check(MAIN);
  }

  @Test
  void only_batches_touch_the_broker_and_nothing_knows_them() {
    noClasses()
        .that()
        .resideInAPackage("easewright..")
        .and()
        .resideOutsideOfPackage("easewright.batch..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("org.apache.kafka..", "easewright.batch..")
        .check(MAIN);
    noClasses()
        .that()
        .resideInAPackage("easewright.batch..")
        .should()
        .dependOnClassesThat(
            resideInAPackage("easewright..")
                .and(
                    not(
                        resideInAnyPackage(
                            "easewright.batch..", "easewright.api..", "easewright.diagnosis.."))))
        .check(MAIN);
  }

  @Test
  void computing_is_free_of_the_framework() {
    noClasses()
        .that()
        .resideInAnyPackage(
            KNOWS.keySet().stream().map(n -> "easewright." + n + "..").toArray(String[]::new))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("io.quarkus..", "jakarta..", "org.eclipse.microprofile..", "io.vertx..")
        .check(MAIN);
  }

  @Test
  void every_package_says_what_it_is_for() throws IOException {
    try (Stream<Path> folders = Files.walk(Path.of("src/main/java/easewright"))) {
      List<Path> silent =
          folders
              .filter(Files::isDirectory)
              .filter(ArchitectureTest::holdsClasses)
              .filter(folder -> !Files.exists(folder.resolve("package-info.java")))
              .toList();
      assertEquals(List.of(), silent);
    }
  }

  private static boolean holdsClasses(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.anyMatch(file -> file.toString().endsWith(".java"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
