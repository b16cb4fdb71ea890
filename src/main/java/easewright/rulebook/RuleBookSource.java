package easewright.rulebook;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.measure.Measures;
import easewright.measure.Plausibility;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The rule book as written, read from its folder at build time and from one file at run time.
 *
 * @param family the family whose part of the book this is; null for the whole book
 * @param version last heading of CHANGES.md
 * @param hash SHA-256 over everything that can change an answer
 * @param families the families of garments that the book judges, by id
 * @param vocabulary the sentences rules may use
 * @param rules every rule
 * @param files file id to its text
 * @param wording every other sentence said, by key
 * @param everyday how wearers say things
 */
public record RuleBookSource(
    String family,
    String version,
    String hash,
    Map<String, Family> families,
    String vocabulary,
    Catalog catalog,
    Map<String, Parameter> parameters,
    List<RuleText> rules,
    Map<String, String> files,
    Map<String, RulePage> pages,
    Wording wording,
    EverydayWords everyday) {

  private static final ObjectMapper JSON = JsonMapper.builder().build();

  /** Reads a rule book folder. */
  public static RuleBookSource read(Path folder) {
    YAMLMapper yaml =
        YAMLMapper.builder().enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES).build();
    try {
      String sentences = Files.readString(folder.resolve("vocabulary.dsl"));
      Vocabulary vocabulary = Vocabulary.of(sentences);
      List<RuleText> rules = new ArrayList<>();
      Map<String, String> files = new LinkedHashMap<>();
      Map<String, RulePage> pages = new LinkedHashMap<>();
      Map<String, Family> families = Family.in(folder);
      Map<String, String> folders = new LinkedHashMap<>();
      for (Path part : parts(folder)) {
        String whose = path(folder, part);
        for (Path file : CatalogReader.under(part, ".dslr")) {
          String id = nameOf(file);
          folders.put(id, whose);
          String text = Files.readString(file);
          if (files.put(id, text) != null) {
            throw new RuleBookFault("Two rule files are called " + id + ".");
          }
          rules.addAll(RuleReader.rules(id, whose, topicOf(file), text, vocabulary));
        }
        for (Path file : CatalogReader.under(part, ".md")) {
          RulePage page =
              RuleReader.page(
                  nameOf(file), topicOf(file), path(folder, file), Files.readString(file), yaml);
          boolean usual = !families.containsKey(whose) || families.get(whose).usual();
          pages.put(page.id(), usual ? page : page.of(whose));
        }
      }
      Map<String, Parameter> parameters = new LinkedHashMap<>();
      for (Parameter parameter :
          CatalogReader.entries(
              yaml, folder.resolve("parameters"), new TypeReference<List<Parameter>>() {})) {
        if (parameters.put(parameter.id(), parameter) != null) {
          throw new RuleBookFault("Parameter " + parameter.id() + " is set twice.");
        }
      }
      return new RuleBookSource(
          null,
          version(folder),
          hash(folder),
          families,
          sentences,
          CatalogReader.read(yaml, folder, families.values(), folders),
          parameters,
          rules,
          files,
          pages,
          new Wording(
              yaml.readValue(
                  Files.readString(folder.resolve("wording.yaml")),
                  new TypeReference<Map<String, String>>() {}),
              Map.of(Voice.USUAL, Voice.read(folder, families.keySet(), yaml))),
          everyday(yaml, folder.resolve("everyday")));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The book compiled into the application, as written. */
  public static RuleBookSource compiledIn() {
    return RuleModels.sourceCompiledIn();
  }

  /** Reads what {@link #write()} wrote. */
  public static RuleBookSource read(InputStream json) throws IOException {
    return JSON.readValue(json, RuleBookSource.class);
  }

  /** The whole book as one JSON text, quick to read at start. */
  byte[] write() throws IOException {
    return JSON.writeValueAsBytes(this);
  }

  /** Value of a parameter in canonical units; a missing one is a fault of the rule book. */
  public double parameter(String id) {
    Parameter parameter = parameters.get(id);
    if (parameter == null) {
      throw new RuleBookFault("Parameter " + id + " is not set in parameters/.");
    }
    return parameter.number();
  }

  /** What is measured for its family; for the usual one where this is the whole book. */
  public Measures measures() {
    return (family == null ? Family.usual(families) : families.get(family)).measures();
  }

  /** How signs and changes of a family of this book are drawn. */
  public Drawings drawings(Family drawn) {
    return catalog.practice().drawings().with(drawn.drawings());
  }

  /** Which of these measurements are impossible or worth repeating. */
  public Plausibility plausibility() {
    return new Plausibility(measures(), wording.sentences());
  }

  /** All files of the folder read as one: entries of the same name in two files are joined. */
  private static EverydayWords everyday(YAMLMapper yaml, Path folder) throws IOException {
    Map<String, Object> all = new LinkedHashMap<>();
    for (Path file : CatalogReader.under(folder, ".yaml")) {
      Map<String, Object> one =
          yaml.readValue(Files.readString(file), new TypeReference<Map<String, Object>>() {});
      one.forEach((section, words) -> all.merge(section, words, RuleBookSource::both));
    }
    return yaml.convertValue(all, EverydayWords.class);
  }

  /** Lists one after the other; maps with the entries of one name joined. */
  static Object both(Object one, Object other) {
    if (one instanceof List<?> first && other instanceof List<?> second) {
      return Stream.concat(first.stream(), second.stream()).toList();
    }
    if (one instanceof Map<?, ?> first && other instanceof Map<?, ?> second) {
      Map<Object, Object> all = new LinkedHashMap<>(first);
      second.forEach((name, words) -> all.merge(name, words, RuleBookSource::both));
      return all;
    }
    throw new RuleBookFault("The everyday words hold a list and a map of one name: " + one);
  }

  /** The folders of the book that hold rules: those of families, and the shared ones. */
  private static List<Path> parts(Path folder) throws IOException {
    List<Path> parts = new ArrayList<>();
    for (Path within : List.of(folder.resolve(Family.COMMON), folder)) {
      if (Files.isDirectory(within)) {
        try (Stream<Path> files = Files.list(within)) {
          files
              .filter(Files::isDirectory)
              .filter(part -> !part.equals(folder.resolve(Family.COMMON)))
              .sorted()
              .forEach(parts::add);
        }
      }
    }
    return parts;
  }

  /** What one family has of the whole book: what stands in its folder and what it includes. */
  public RuleBookSource in(Family family) {
    return new FamilyView(this, family).source();
  }

  /** With slashes on every system, as pages and problems show it. */
  private static String path(Path folder, Path file) {
    return folder.relativize(file).toString().replace('\\', '/');
  }

  private static String nameOf(Path file) {
    String name = file.getFileName().toString();
    return name.substring(0, name.lastIndexOf('.'));
  }

  private static String topicOf(Path file) {
    return file.getParent().getFileName().toString();
  }

  private static String version(Path folder) throws IOException {
    return Files.readString(folder.resolve("CHANGES.md"))
        .lines()
        .filter(line -> line.startsWith("## "))
        .map(line -> line.substring(3).strip())
        .findFirst()
        .orElseThrow(() -> new RuleBookFault("CHANGES.md has no heading with a version."));
  }

  private static String hash(Path folder) throws IOException {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      List<Path> counted = new ArrayList<>(CatalogReader.under(folder, ".dslr"));
      counted.addAll(CatalogReader.under(folder, ".dsl"));
      counted.addAll(CatalogReader.under(folder, ".yaml"));
      counted.addAll(CatalogReader.under(folder, Outline.FILE));
      for (Path file : counted) {
        digest.update(folder.relativize(file).toString().getBytes(StandardCharsets.UTF_8));
        digest.update(Files.readAllBytes(file));
      }
      return "sha256:" + HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
