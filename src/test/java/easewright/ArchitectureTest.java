package easewright;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Dependencies point one way, and frameworks stay where they belong. */
class ArchitectureTest {
  /** Longer ones ask for a part to be taken out. */
  private static final int MOST_LINES = 250;

  /** Each with its reason. */
  private static final Map<String, String> MAY_BE_LONGER =
      Map.of(
          "Answer.java", "one record with its parts, as the contract has it",
          "CutPlan.java", "one record with its parts, as the contract has it");

  /** Maximum share of the lines of main code in one package. */
  private static final int MOST_PERCENT = 15;

  private static final JavaClasses MAIN =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("easewright");

  /** Each package with those it may depend on, besides itself. The edges come last. */
  private static final Map<String, Set<String>> KNOWS =
      Map.ofEntries(
          Map.entry("deadline", Set.of()),
          Map.entry("wording", Set.of()),
          Map.entry("measure", Set.of("wording")),
          Map.entry("naming", Set.of()),
          Map.entry("inference", Set.of()),
          Map.entry("layout", Set.of("deadline")),
          Map.entry("cloth", Set.of("measure")),
          Map.entry("body", Set.of("measure", "cloth")),
          Map.entry("size", Set.of("measure")),
          Map.entry("pattern", Set.of("wording", "deadline", "measure", "cloth", "body", "size")),
          Map.entry(
              "rulebook",
              Set.of(
                  "wording", "deadline", "measure", "naming", "cloth", "body", "size", "pattern")),
          Map.entry("fitting", Set.of("measure", "cloth", "size", "pattern", "rulebook")),
          Map.entry("handbook", Set.of("rulebook")),
          Map.entry(
              "diagnosis",
              Set.of(
                  "inference",
                  "wording",
                  "measure",
                  "cloth",
                  "body",
                  "size",
                  "pattern",
                  "rulebook",
                  "fitting")),
          Map.entry("reply", Set.of("rulebook", "fitting", "diagnosis")),
          Map.entry("reading", Set.of("deadline")),
          Map.entry("modelreader", Set.of("wording", "deadline")),
          Map.entry("number", Set.of("measure", "rulebook")),
          Map.entry("english", Set.of("number")),
          Map.entry(
              "intake",
              Set.of(
                  "wording",
                  "deadline",
                  "measure",
                  "number",
                  "english",
                  "rulebook",
                  "reading",
                  "modelreader")),
          Map.entry("photo", Set.of("deadline")),
          Map.entry("clinic", Set.of("deadline", "fitting", "diagnosis", "pattern", "photo")),
          Map.entry(
              "check",
              Set.of(
                  "wording",
                  "measure",
                  "cloth",
                  "body",
                  "size",
                  "pattern",
                  "rulebook",
                  "fitting",
                  "diagnosis")),
          Map.entry(
              "plan",
              Set.of(
                  "wording",
                  "measure",
                  "layout",
                  "cloth",
                  "size",
                  "pattern",
                  "rulebook",
                  "fitting",
                  "diagnosis")),
          Map.entry("contract", Set.of()),
          Map.entry("access", Set.of("clinic")),
          Map.entry(
              "request",
              Set.of(
                  "wording",
                  "deadline",
                  "naming",
                  "measure",
                  "cloth",
                  "size",
                  "pattern",
                  "rulebook",
                  "fitting",
                  "diagnosis",
                  "reading",
                  "modelreader",
                  "number",
                  "english",
                  "intake",
                  "photo",
                  "clinic",
                  "check",
                  "plan")),
          Map.entry(
              "saying",
              Set.of(
                  "wording",
                  "deadline",
                  "naming",
                  "measure",
                  "pattern",
                  "rulebook",
                  "handbook",
                  "fitting",
                  "diagnosis",
                  "reply",
                  "clinic",
                  "check",
                  "plan",
                  "access",
                  "request")),
          Map.entry(
              "answering",
              Set.of(
                  "wording",
                  "deadline",
                  "measure",
                  "size",
                  "pattern",
                  "rulebook",
                  "handbook",
                  "fitting",
                  "diagnosis",
                  "reading",
                  "modelreader",
                  "photo",
                  "clinic",
                  "check",
                  "plan",
                  "request",
                  "reply",
                  "saying")),
          Map.entry(
              "operation",
              Set.of("rulebook", "fitting", "diagnosis", "clinic", "modelreader", "answering")),
          Map.entry("guard", Set.of("access", "saying")),
          Map.entry(
              "cli",
              Set.of(
                  "wording",
                  "naming",
                  "fitting",
                  "diagnosis",
                  "pattern",
                  "rulebook",
                  "request",
                  "saying",
                  "answering")),
          Map.entry("batch", Set.of("fitting", "diagnosis", "request", "saying", "answering")),
          Map.entry(
              "mcp",
              Set.of(
                  "fitting",
                  "diagnosis",
                  "check",
                  "plan",
                  "contract",
                  "access",
                  "request",
                  "saying",
                  "answering")),
          Map.entry(
              "http",
              Set.of(
                  "wording",
                  "deadline",
                  "naming",
                  "pattern",
                  "rulebook",
                  "handbook",
                  "fitting",
                  "diagnosis",
                  "check",
                  "plan",
                  "clinic",
                  "contract",
                  "access",
                  "request",
                  "saying",
                  "answering")),
          Map.entry(
              "desk",
              Set.of(
                  "wording",
                  "naming",
                  "size",
                  "pattern",
                  "rulebook",
                  "handbook",
                  "fitting",
                  "diagnosis",
                  "reply",
                  "check",
                  "plan",
                  "clinic",
                  "access",
                  "request",
                  "saying",
                  "answering")),
          // Compiled from the rule book.
          Map.entry("rules", Set.of("rulebook")));

  /** Packages that compute and answer, without any framework. */
  private static final Set<String> PLAIN =
      Set.of(
          "deadline",
          "wording",
          "measure",
          "naming",
          "layout",
          "inference",
          "cloth",
          "body",
          "size",
          "pattern",
          "rulebook",
          "handbook",
          "fitting",
          "diagnosis",
          "reply",
          "reading",
          "modelreader",
          "number",
          "english",
          "intake",
          "photo",
          "clinic",
          "check",
          "plan",
          "request");

  /**
   * No edge (http, desk, mcp, batch, cli, guard) is in the list of another, so none calls another.
   * A type that a class only passes from one call to the next also counts.
   */
  @Test
  void every_package_knows_only_those_in_its_list() {
    Map<String, Set<String>> wrong = new TreeMap<>();
    for (JavaClass one : MAIN) {
      String name = packageOf(one).orElseThrow();
      Set<String> known = KNOWS.getOrDefault(name, Set.of());
      typesIn(one)
          .filter(type -> !known.contains(packageOf(type).orElse(name)))
          .filter(type -> !packageOf(type).orElse(name).equals(name))
          .forEach(
              type ->
                  wrong
                      .computeIfAbsent(one.getSimpleName(), key -> new TreeSet<>())
                      .add(type.getName()));
    }
    assertEquals(Map.of(), wrong);
  }

  private static Stream<JavaClass> typesIn(JavaClass one) {
    return Stream.of(
            one.getDirectDependenciesFromSelf().stream().map(Dependency::getTargetClass),
            one.getFieldAccessesFromSelf().stream().map(access -> access.getTarget().getRawType()),
            one.getCodeUnitCallsFromSelf().stream()
                .map(JavaAccess::getTarget)
                .map(AccessTarget.CodeUnitAccessTarget.class::cast)
                .flatMap(
                    called ->
                        Stream.concat(
                            Stream.of(called.getRawReturnType()),
                            called.getRawParameterTypes().stream())))
        .flatMap(types -> types)
        .map(type -> (JavaClass) type)
        .map(JavaClass::getBaseComponentType);
  }

  /** The first package below {@code easewright}; empty for other types. */
  private static Optional<String> packageOf(JavaClass type) {
    String[] parts = type.getPackageName().split("\\.");
    return parts[0].equals("easewright") && parts.length > 1
        ? Optional.of(parts[1])
        : Optional.empty();
  }

  @Test
  void no_package_holds_more_than_its_share_of_the_code() throws IOException {
    Map<String, Long> lines = new TreeMap<>();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/easewright"))) {
      for (Path file : files.filter(file -> file.toString().endsWith(".java")).toList()) {
        String name = Path.of("src/main/java/easewright").relativize(file).getName(0).toString();
        lines.merge(name, Files.lines(file).filter(line -> !line.isBlank()).count(), Long::sum);
      }
    }
    long all = lines.values().stream().mapToLong(Long::longValue).sum();
    Map<String, Long> large = new TreeMap<>(lines);
    large.values().removeIf(own -> own * 100 <= all * MOST_PERCENT);
    assertEquals(Map.of(), large, "of " + all);
  }

  @Test
  void classes_are_short() throws IOException {
    List<String> longer = new ArrayList<>();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/easewright"))) {
      for (Path file : files.filter(one -> one.toString().endsWith(".java")).toList()) {
        if (Files.readAllLines(file).size() > MOST_LINES) {
          longer.add(file.getFileName().toString());
        }
      }
    }
    assertEquals(MAY_BE_LONGER.keySet(), new TreeSet<>(longer));
  }

  @Test
  void no_two_classes_share_a_name() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/easewright"))) {
      Map<String, List<Path>> byName =
          files
              .filter(file -> file.toString().endsWith(".java"))
              .filter(file -> !file.endsWith("package-info.java"))
              .collect(Collectors.groupingBy(file -> file.getFileName().toString()));
      byName.values().removeIf(same -> same.size() == 1);
      assertEquals(Map.of(), byName);
    }
  }

  /**
   * Prevents server-side request forgery (OWASP API7:2023). The reader by a language model asks
   * only the address that the operator set (ModelReaderTest).
   */
  @Test
  void the_service_asks_nobody_anything_over_the_network() {
    noClasses()
        .that()
        .resideInAPackage("easewright..")
        .and()
        .resideOutsideOfPackage("easewright.modelreader..")
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

  /** Facts for the rules are plain records, so that a rule can be tested without the engine. */
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
        .resideInAPackage("easewright.inference..")
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage("java..", "easewright.inference..", "org.apache.commons.math3..")
        .check(MAIN);
  }

  @Test
  void frameworks_stay_where_they_belong() {
    touchedOnlyBy("jakarta.ws.rs..", "http", "desk");
    touchedOnlyBy("io.quarkiverse.mcp..", "mcp");
    touchedOnlyBy("org.apache.kafka..", "batch");
  }

  private static void touchedOnlyBy(String framework, String... packages) {
    noClasses()
        .that()
        .resideOutsideOfPackages(
            Stream.of(packages).map(name -> "easewright." + name + "..").toArray(String[]::new))
        .should()
        .dependOnClassesThat()
        .resideInAPackage(framework)
        .check(MAIN);
  }

  @Test
  void computing_is_free_of_the_framework() {
    noClasses()
        .that()
        .resideInAnyPackage(
            PLAIN.stream().map(name -> "easewright." + name + "..").toArray(String[]::new))
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
