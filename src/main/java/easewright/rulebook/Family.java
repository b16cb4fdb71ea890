package easewright.rulebook;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.measure.Measures;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * A family of garments: what {@code family.yaml} in its folder of the rule book says.
 *
 * @param id name of its folder, e.g. "sports-bra"
 * @param name what such a garment is called
 * @param called what writers call it, in small letters
 * @param parts of the usual family, words for parts that no other has, in small letters: a text
 *     with one speaks of such a garment, whatever else it names
 * @param usual whether it serves requests that tell of no family
 * @param includes shared folders whose rules it hears too, e.g. "common/making"
 * @param catalog names of the files in the book's own catalog that hold its signs and adjustments
 * @param instead what it says of shared things in words of its own
 * @param nothingWrong how many of such fittings have nothing wrong; null for the book's own
 *     parameter
 * @param measures what is measured for it, as {@code measures.yaml} beside it says
 * @param sayings how wearers say things of it, beside the words for the usual one, as {@code
 *     sayings.yaml} beside it says in the form of {@code everyday}; null if the file is missing
 * @param outline its garment with the places on it, as {@code outline.svg} beside it draws
 * @param drawings of its signs and changes, as {@code drawings.yaml} beside it says; null for none
 */
public record Family(
    String id,
    String name,
    List<String> called,
    List<String> parts,
    boolean usual,
    List<String> includes,
    List<String> catalog,
    Instead instead,
    Share nothingWrong,
    Measures measures,
    Map<String, Object> sayings,
    Outline outline,
    Drawings drawings) {

  /** The file that makes a folder a family. */
  public static final String FILE = "family.yaml";

  /** The file beside it that says what is measured. */
  public static final String MEASURES = "measures.yaml";

  /** The file beside it that says how wearers say things of it. */
  public static final String SAYINGS = "sayings.yaml";

  /** The file beside it that draws signs and changes. */
  public static final String DRAWINGS = "drawings.yaml";

  /** The folder of what several families share, by topic. */
  public static final String COMMON = "common/";

  private static final YAMLMapper YAML = new YAMLMapper();

  public Family {
    called = called == null ? List.of() : List.copyOf(called);
    parts = parts == null ? List.of() : List.copyOf(parts);
    includes = includes == null ? List.of() : List.copyOf(includes);
    catalog = catalog == null ? List.of() : List.copyOf(catalog);
    measures = measures == null ? Measures.NONE : measures;
    outline = outline == null ? Outline.NONE : outline;
    instead = instead == null ? new Instead(null, null, null) : instead;
  }

  /**
   * Words that stand in a family in place of the shared ones, which may speak of another garment.
   *
   * @param catalog entry of the catalog, by id, to those of its fields that differ
   * @param voice file of the voice to those of its entries that differ, each whole
   * @param wording key of a sentence to the sentence
   */
  public record Instead(
      Map<String, ObjectNode> catalog, Map<String, ObjectNode> voice, Map<String, String> wording) {

    public Instead {
      catalog = catalog == null ? Map.of() : Map.copyOf(catalog);
      voice = voice == null ? Map.of() : Map.copyOf(voice);
      wording = wording == null ? Map.of() : Map.copyOf(wording);
    }
  }

  /**
   * A share of all fittings, with what stands for it.
   *
   * @param value such as "60 %"
   * @param since month it was set
   * @param source publication, "common practice" or "from memory"
   */
  public record Share(String value, String since, String source) {}

  /** Whether what a folder holds, a family's own or a shared one, is heard in this family. */
  public boolean hears(String folder) {
    return folder.equals(id) || includes.contains(folder);
  }

  /** Whether this is its id, or the id of something it is called. */
  public boolean isNamed(String word) {
    return id.equals(word) || called.stream().map(Catalog::idOf).anyMatch(word::equals);
  }

  /** The family of this name, or of garments called so. */
  public static Optional<Family> named(String word, Map<String, Family> families) {
    return Optional.ofNullable(families.get(word))
        .or(() -> families.values().stream().filter(one -> one.isNamed(word)).findFirst());
  }

  /** The one that serves requests that tell of none. */
  public static Family usual(Map<String, Family> families) {
    List<Family> usual = families.values().stream().filter(Family::usual).toList();
    if (usual.size() != 1) {
      throw new RuleBookFault(
          "One " + FILE + " must say \"usual: true\"; " + usual.size() + " say it.");
    }
    return usual.get(0);
  }

  /** The families of a book's folder, by id. */
  public static Map<String, Family> in(Path book) {
    Map<String, Family> families = new TreeMap<>();
    try (Stream<Path> folders = Files.list(book)) {
      for (Path folder : folders.filter(one -> Files.exists(one.resolve(FILE))).toList()) {
        String id = folder.getFileName().toString();
        ObjectNode written = written(folder.resolve(FILE)).put("id", id);
        for (String beside : List.of(MEASURES, SAYINGS, DRAWINGS)) {
          if (Files.exists(folder.resolve(beside))) {
            written.set(beside.replace(".yaml", ""), written(folder.resolve(beside)));
          }
        }
        Path outline = folder.resolve(Outline.FILE);
        if (Files.exists(outline)) {
          written.set("outline", YAML.valueToTree(Outline.read(Files.readString(outline))));
        }
        families.put(id, YAML.treeToValue(written, Family.class));
      }
    } catch (JsonProcessingException unreadable) {
      throw new RuleBookFault("A family's files: " + unreadable.getMessage());
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    return families;
  }

  private static ObjectNode written(Path file) throws IOException {
    return YAML.readValue(Files.readString(file), ObjectNode.class);
  }
}
