package easewright.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.answering.OwnBook;
import easewright.diagnosis.RuleWords;
import easewright.measure.FigureFormula;
import easewright.measure.Measures;
import easewright.pattern.PatternSheets;
import easewright.request.CircumstancesReader;
import easewright.rulebook.Catalog;
import easewright.rulebook.EverydayWords;
import easewright.rulebook.Family;
import easewright.rulebook.OrderOfWork;
import easewright.rulebook.Practice;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.check.KnownWords;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

/** The words in the README and in the schemas for rule writers are those the program knows. */
class BookWordsTest {
  private static final RuleBookSource BOOK = RuleBookSource.read(Path.of("rules"));
  private static final Pattern ROW = Pattern.compile("^\\| ([^|`]+) \\| (`[^|]+`) \\|.*$");
  private static final Pattern WORD = Pattern.compile("`([^`]+)`");

  private static JsonNode schema(String name) {
    try {
      return new ObjectMapper().readTree(Path.of("rules/schema/" + name + ".schema.json").toFile());
    } catch (IOException unreadable) {
      throw new AssertionError(unreadable);
    }
  }

  private static Set<String> listed(String name, String pointer) {
    JsonNode values = schema(name).at("/items/properties" + pointer + "/enum");
    assertTrue(values.isArray(), name + pointer);
    return StreamSupport.stream(values.spliterator(), false)
        .map(JsonNode::asText)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** The parameters with this prefix, which ends with a hyphen. */
  private static Set<String> parameters(String prefix) {
    return BOOK.parameters().keySet().stream()
        .filter(id -> id.startsWith(prefix))
        .map(id -> id.substring(prefix.length()).replace('-', ' '))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** The words in the sentences that call a method of the statements. */
  private static Set<String> inSentences(String method) {
    return Pattern.compile("book\\." + method + "\\(drools, \"\\{\\w+}\", \"([a-z-]+)\"")
        .matcher(BOOK.vocabulary())
        .results()
        .map(found -> found.group(1))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Map<String, Collection<String>> known() {
    Map<String, Collection<String>> known = new TreeMap<>();
    known.put("circumstances", ids(BOOK.catalog().practice().circumstances()));
    known.put("traits", ids(BOOK.catalog().practice().traits()));
    known.put("figures", RuleWords.FIGURES);
    new OwnBook(new PatternSheets())
        .words()
        .choices()
        .forEach((choice, options) -> known.put("choice " + choice, options));
    known.put("times", KnownWords.TIMES);
    known.put("outcomes", KnownWords.OUTCOMES);
    known.put("strengths", inSentences("shows"));
    known.put("cures", inSentences("cures"));
    known.put("places", listed("signs", "/where/items"));
    known.put("look", listed("signs", "/look/items"));
    known.put("degrees", List.of("slight", "clear", "strong"));
    known.put("effort of asking", listed("signs", "/effort"));
    known.put("without fault", listed("signs", "/withoutFault"));
    known.put("areas", listed("causes", "/area"));
    known.put("stages", stages());
    known.put("priors", listed("causes", "/prior"));
    known.put("amount methods", listed("adjustments", "/method"));
    known.put("effort of work", listed("adjustments", "/effort"));
    known.put("undo", listed("adjustments", "/undo"));
    known.put("cut", listed("adjustments", "/cut/properties/way"));
    known.put("urgency", listed("cautions", "/urgency"));
    return known;
  }

  private static List<String> ids(List<? extends Catalog.Entry> entries) {
    return entries.stream().map(Catalog.Entry::id).toList();
  }

  private static List<String> stages() {
    return BOOK.catalog().practice().order().stages().stream().map(OrderOfWork.Stage::id).toList();
  }

  /**
   * A circumstance that no rule may name would be lost; one that no request can state would never
   * fire a rule.
   */
  @Test
  void requests_can_say_the_books_circumstances_and_no_others() {
    assertEquals(
        CircumstancesReader.all(), new TreeSet<>(ids(BOOK.catalog().practice().circumstances())));
  }

  @Test
  void the_readme_lists_every_word_one_may_use_and_no_other() throws IOException {
    Map<String, Set<String>> written = new TreeMap<>();
    String readme = Files.readString(Path.of("rules/README.md"));
    String section = readme.substring(readme.indexOf("## The words you may use"));
    for (String line : section.substring(0, section.indexOf("## Wording")).lines().toList()) {
      Matcher row = ROW.matcher(line);
      if (row.matches()) {
        written.put(
            row.group(1),
            WORD.matcher(row.group(2))
                .results()
                .map(found -> found.group(1))
                .collect(Collectors.toCollection(TreeSet::new)));
      }
    }
    Map<String, Set<String>> known = new TreeMap<>();
    known().forEach((name, words) -> known.put(name, new TreeSet<>(words)));
    assertEquals(lines(known), lines(written));
  }

  private static String lines(Map<String, Set<String>> words) {
    return words.entrySet().stream().map(Object::toString).collect(Collectors.joining("\n"));
  }

  @Test
  void the_schemas_know_the_words_the_program_and_the_parameters_know() {
    assertEquals(new TreeSet<>(RuleWords.methods()), listed("adjustments", "/method"));
    Set<String> measurable = new TreeSet<>(RuleWords.methods());
    measurable.remove("none");
    assertEquals(measurable, listed("signs", "/measures/items"));
    assertEquals(parameters("ask-"), withoutTheThreshold(listed("signs", "/effort")));
    assertEquals(parameters("effort-"), listed("adjustments", "/effort"));
    assertEquals(parameters("without-fault-"), listed("signs", "/withoutFault"));
    assertEquals(parameters("without-fault-"), listed("findings", "/withoutFault"));
    listed("causes", "/prior")
        .forEach(word -> assertTrue(BOOK.parameters().containsKey(word.replace(' ', '-')), word));
    assertEquals(
        BOOK.wording().sentences().keySet().stream()
            .filter(key -> key.startsWith("photo-"))
            .map(key -> key.substring("photo-".length()).replace('-', ' '))
            .filter(word -> !Set.of("worn", "laid flat", "front", "side", "back").contains(word))
            .collect(Collectors.toCollection(TreeSet::new)),
        listed("signs", "/look/items"));
  }

  /** "ask-about" is a threshold, not an effort. */
  private static Set<String> withoutTheThreshold(Set<String> efforts) {
    Set<String> words = new TreeSet<>(efforts);
    words.add("about");
    return words;
  }

  /** A field missing from one is either rejected by editors or silently dropped. */
  @Test
  void the_schemas_have_the_fields_the_program_reads() {
    Map<String, Class<? extends Record>> entries = new LinkedHashMap<>();
    entries.put("signs", Catalog.SignEntry.class);
    entries.put("causes", Catalog.CauseEntry.class);
    entries.put("findings", Catalog.FindingEntry.class);
    entries.put("adjustments", Catalog.AdjustmentEntry.class);
    entries.put("cautions", Catalog.CautionEntry.class);
    entries.put("reasons", Catalog.ReasonEntry.class);
    entries.forEach(
        (name, type) ->
            assertEquals(fields(type), properties(schema(name).at("/items/properties")), name));
    assertEquals(
        fields(Catalog.CutChange.class),
        properties(schema("adjustments").at("/items/properties/cut/properties")));
    assertEquals(
        Set.of("id", "value", "unit", "for", "since", "source"),
        properties(schema("parameters").at("/items/properties")));
    assertEquals(
        new TreeSet<>(Practice.FILES), fields(Practice.class), "a file of practice/ for each part");
    assertEquals(fields(EverydayWords.class), properties(schema("everyday").at("/properties")));
    Set<String> family = properties(schema("family").at("/properties"));
    family.addAll(
        Set.of("id", "measures", "sayings", "outline", "drawings")); // its folder, and files in it
    assertEquals(fields(Family.class), family);
    JsonNode measures = schema("measures").at("/properties");
    assertEquals(fields(Measures.class), properties(measures));
    Map.of(
            "measurements", Measures.OfBody.class,
            "comparisons", Measures.Comparison.class,
            "orders", Measures.Order.class,
            "held", Measures.Held.class,
            "garment", Measures.OfGarment.class,
            "figures", FigureFormula.class,
            "missing", Measures.Missing.class)
        .forEach(
            (list, type) ->
                assertEquals(
                    fields(type), properties(measures.at("/" + list + "/items/properties")), list));
  }

  private static Set<String> fields(Class<? extends Record> type) {
    return Arrays.stream(type.getRecordComponents())
        .map(BookWordsTest::wireName)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static String wireName(RecordComponent component) {
    JsonProperty named = component.getAccessor().getAnnotation(JsonProperty.class);
    return named == null ? component.getName() : named.value();
  }

  private static Set<String> properties(JsonNode properties) {
    Set<String> names = new TreeSet<>();
    properties.fieldNames().forEachRemaining(names::add);
    return names;
  }

  /** Otherwise a book without it would fail only at a request. */
  @Test
  void every_number_the_code_names_is_among_those_a_book_must_have() throws IOException {
    Set<String> needed = new OwnBook(new PatternSheets()).words().parameters();
    StringBuilder sources = new StringBuilder();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/easewright"))) {
      for (Path file :
          files
              .filter(f -> f.toString().endsWith(".java") && !f.endsWith("RuleWords.java"))
              .toList()) {
        sources.append(Files.readString(file));
      }
    }
    assertEquals(
        List.of(),
        BOOK.parameters().keySet().stream()
            .filter(id -> sources.indexOf("\"" + id + "\"") >= 0)
            .filter(id -> !needed.contains(id))
            .toList());
  }

  /** The line by which editors find a file's schema. */
  @Test
  void every_file_of_the_book_names_its_schema() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("rules"))) {
      for (Path file : files.filter(one -> one.toString().endsWith(".yaml")).toList()) {
        String first = Files.readAllLines(file).get(0);
        String prefix = "# yaml-language-server: $schema=";
        assertTrue(first.startsWith(prefix), file + " begins with " + first);
        Path schema = file.getParent().resolve(first.substring(prefix.length()));
        assertTrue(Files.exists(schema), file + " names " + schema);
        String folder = file.getParent().getFileName().toString();
        String named = schema.getFileName().toString().replace(".schema.json", "");
        assertEquals(
            switch (folder) {
              case "rules" -> "wording";
              case "sayings" -> "everyday";
              case "en" -> "voice-" + file.getFileName().toString().replace(".yaml", "");
              case "practice" -> file.getFileName().toString().replace(".yaml", "");
              default ->
                  file.endsWith(Family.SAYINGS)
                      ? "everyday"
                      : Files.exists(file.resolveSibling(Family.FILE))
                          ? file.getFileName().toString().replace(".yaml", "")
                          : folder;
            },
            named,
            file.toString());
      }
    }
  }
}
