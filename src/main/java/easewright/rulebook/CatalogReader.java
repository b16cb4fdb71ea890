package easewright.rulebook;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Catalog.CauseEntry;
import easewright.rulebook.Catalog.CautionEntry;
import easewright.rulebook.Catalog.FindingEntry;
import easewright.rulebook.Catalog.ReasonEntry;
import easewright.rulebook.Catalog.SignEntry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Reads what a book has names for, and how the trade works. */
final class CatalogReader {
  private CatalogReader() {}

  /**
   * Reads the catalogs of a book: its own, and that in the folder of any family.
   *
   * @param rules file id to the folder whose rules it holds, which its entry belongs to
   */
  static Catalog read(
      YAMLMapper yaml, Path book, Collection<Family> families, Map<String, String> rules)
      throws IOException {
    Map<String, String> folders = new HashMap<>(rules);
    List<Path> roots = new ArrayList<>(List.of(book));
    families.forEach(family -> roots.add(book.resolve(family.id())));
    List<SignEntry> signs = new ArrayList<>();
    List<AdjustmentEntry> adjustments = new ArrayList<>();
    List<CauseEntry> causes = new ArrayList<>();
    List<FindingEntry> findings = new ArrayList<>();
    List<CautionEntry> cautions = new ArrayList<>();
    List<ReasonEntry> reasons = new ArrayList<>();
    for (Path root : roots) {
      Path catalog = root.resolve("catalog");
      for (Path file : under(catalog.resolve("signs"), ".yaml")) {
        List<SignEntry> read = file(yaml, file, new TypeReference<>() {});
        String whose = root.equals(book) ? whose(file, book, families) : nameOf(root);
        read.forEach(one -> put(one.id(), one.of() == null ? whose : one.of(), folders));
        signs.addAll(read);
      }
      for (Path file : under(catalog.resolve("adjustments"), ".yaml")) {
        List<AdjustmentEntry> read = file(yaml, file, new TypeReference<>() {});
        String whose = root.equals(book) ? whose(file, book, families) : nameOf(root);
        read.forEach(one -> folders.putIfAbsent(one.id(), one.of() == null ? whose : one.of()));
        adjustments.addAll(read);
      }
      causes.addAll(entries(yaml, catalog.resolve("causes"), new TypeReference<>() {}));
      findings.addAll(entries(yaml, catalog.resolve("findings"), new TypeReference<>() {}));
      cautions.addAll(entries(yaml, catalog.resolve("cautions"), new TypeReference<>() {}));
      reasons.addAll(entries(yaml, catalog.resolve("reasons"), new TypeReference<>() {}));
    }
    return new Catalog(
        Catalog.byId(signs),
        Catalog.byId(causes),
        Catalog.byId(findings),
        Catalog.byId(adjustments),
        Catalog.byId(cautions),
        Catalog.byId(reasons),
        practice(yaml, book.resolve("practice")),
        folders);
  }

  private static void put(String sign, String folder, Map<String, String> folders) {
    if (folders.put(sign, folder) != null) {
      throw new RuleBookFault(
          "The id " + sign + " belongs to a sign and to something else. Rename one.");
    }
  }

  /** Whose the entries of a file of the book's own catalog are. */
  private static String whose(Path file, Path book, Collection<Family> families) {
    String name = nameOf(file).replace(".yaml", "");
    if (Files.isDirectory(book.resolve(Family.COMMON + name))) {
      return Family.COMMON + name;
    }
    return families.stream()
        .filter(family -> family.catalog().contains(name))
        .map(Family::id)
        .findFirst()
        .orElseThrow(
            () ->
                new RuleBookFault(
                    "No family.yaml names \""
                        + name
                        + "\" under catalog, so it belongs to no family."));
  }

  private static String nameOf(Path path) {
    return path.getFileName().toString();
  }

  /** Each file of the folder under its name. */
  private static Practice practice(YAMLMapper yaml, Path folder) throws IOException {
    ObjectNode all = yaml.createObjectNode();
    for (String name : Practice.FILES) {
      all.set(name, yaml.readTree(Files.readString(folder.resolve(name + ".yaml"))));
    }
    return yaml.convertValue(all, Practice.class);
  }

  /** The entries of all files of a folder. */
  static <T> List<T> entries(YAMLMapper yaml, Path folder, TypeReference<List<T>> type)
      throws IOException {
    List<T> all = new ArrayList<>();
    for (Path file : under(folder, ".yaml")) {
      all.addAll(file(yaml, file, type));
    }
    return all;
  }

  private static <T> List<T> file(YAMLMapper yaml, Path file, TypeReference<List<T>> type)
      throws IOException {
    try {
      List<T> read = yaml.readValue(Files.readString(file), type);
      return read == null ? List.of() : read;
    } catch (JsonProcessingException e) {
      throw new RuleBookFault(nameOf(file) + ": " + e.getMessage());
    }
  }

  /** The files under a folder with an ending, in order; none where there is no folder. */
  static List<Path> under(Path folder, String ending) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(file -> file.toString().endsWith(ending)).sorted().toList();
    }
  }
}
