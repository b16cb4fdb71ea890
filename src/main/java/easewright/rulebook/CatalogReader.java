package easewright.rulebook;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Reads what a book has names for, and how the trade works. */
final class CatalogReader {
  private CatalogReader() {}

  static Catalog read(YAMLMapper yaml, Path book) throws IOException {
    Path folder = book.resolve("catalog");
    return new Catalog(
        Catalog.byId(entries(yaml, folder.resolve("signs"), new TypeReference<>() {})),
        Catalog.byId(entries(yaml, folder.resolve("causes"), new TypeReference<>() {})),
        Catalog.byId(entries(yaml, folder.resolve("findings"), new TypeReference<>() {})),
        Catalog.byId(entries(yaml, folder.resolve("adjustments"), new TypeReference<>() {})),
        Catalog.byId(entries(yaml, folder.resolve("cautions"), new TypeReference<>() {})),
        Catalog.byId(entries(yaml, folder.resolve("reasons"), new TypeReference<>() {})),
        practice(yaml, book.resolve("practice")));
  }

  /** Each file of the folder under its name. */
  private static Practice practice(YAMLMapper yaml, Path folder) throws IOException {
    ObjectNode all = yaml.createObjectNode();
    for (String name : Practice.FILES) {
      all.set(name, yaml.readTree(Files.readString(folder.resolve(name + ".yaml"))));
    }
    return yaml.convertValue(all, Practice.class);
  }

  static <T> List<T> entries(YAMLMapper yaml, Path folder, TypeReference<List<T>> type)
      throws IOException {
    List<T> all = new ArrayList<>();
    for (Path file : under(folder, ".yaml")) {
      try {
        List<T> read = yaml.readValue(Files.readString(file), type);
        if (read != null) {
          all.addAll(read);
        }
      } catch (IOException e) {
        throw new RuleBookFault(folder.relativize(file) + ": " + e.getMessage());
      }
    }
    return all;
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
