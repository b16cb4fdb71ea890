package easewright.rulebook.check;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Reads every file of a book's folder as text. */
final class BookFiles {
  private BookFiles() {}

  /** The files of the book with their texts, by path within it, with slashes. */
  static Map<String, String> texts(Path folder, List<BookProblem> unreadable) {
    Map<String, String> texts = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(folder)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        String path = folder.relativize(file).toString().replace('\\', '/');
        if (!path.startsWith(".") && path.matches(".*\\.(yaml|yml|dslr|dsl|md|svg)")) {
          try {
            texts.put(path, Files.readString(file));
          } catch (MalformedInputException notUtf8) {
            unreadable.add(
                new BookProblem(path, 0, "The file is not in UTF-8.", "Save it as UTF-8 text."));
          }
        }
      }
    } catch (IOException unreadableFolder) {
      throw new UncheckedIOException(unreadableFolder);
    }
    return texts;
  }
}
