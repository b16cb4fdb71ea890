package easewright.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Copies of the rule book in which the same rules stand several times, each time for another family
 * of garments: a family has signs, causes, numbers and changes of its own, and shares with others
 * what is said of the wearing and of the pattern.
 */
final class FamilyBook {
  private static final Pattern OWN =
      Pattern.compile(
          "\"([^\"]+)\"(?= (?:nearly always|usually|often|sometimes|rarely|never) shows"
              + " as)|(?<=shows as )\"([^\"]+)\"|\"([^\"]+)\"(?= (?:fully|largely|partly) cures|"
              + " worsens| brought| was tried| is likely| is in play)|(?<=cures |worsens |brought"
              + " |amount to |so that |found that |reports |denies |place of |of all |put |back"
              + " )\"([^\"]+)\"|(?<=^  the )\"([^\"]+)\"(?= is (?:below|above|at least|at most))",
          Pattern.MULTILINE);

  private FamilyBook() {}

  /**
   * Writes a book of so many families, the first of them ours.
   *
   * @return its folder
   */
  static Path write(Path rules, Path folder, int families) {
    try (Stream<Path> walk = Files.walk(rules)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        Path to = folder.resolve(rules.relativize(file).toString());
        Files.createDirectories(to.getParent());
        String text = Files.readString(file);
        Files.writeString(to, text);
        if (to.endsWith("family.yaml")) {
          for (int family = 2; family <= families; family++) {
            String name = "family-" + family;
            Files.createDirectories(folder.resolve(name));
            Files.writeString(
                folder.resolve(name).resolve("family.yaml"),
                "name: family %d\ncalled: [family %d]\n".formatted(family, family));
          }
        }
        if (file.toString().endsWith(".dslr")) {
          for (int family = 2; family <= families; family++) {
            String name = "family-" + family;
            Path other = folder.resolve(name).resolve(name + "-" + to.getFileName());
            Files.createDirectories(other.getParent());
            Files.writeString(other, of(family, text));
          }
        }
      }
      return folder;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String of(int family, String text) {
    String own = "family " + family + " ";
    return OWN.matcher(text)
        .replaceAll(m -> "\"" + own + m.group().replace("\"", "") + "\"")
        .replaceAll("(?m)^rule \"", "rule \"" + own);
  }
}
