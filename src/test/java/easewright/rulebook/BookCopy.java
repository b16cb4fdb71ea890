package easewright.rulebook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * A copy of the project's rule book, to be changed by a test.
 *
 * @param folder where it lies
 */
public record BookCopy(Path folder) {

  /** Copies the book into a folder. */
  public static BookCopy in(Path folder) {
    try (Stream<Path> files = Files.walk(Path.of("rules"))) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Path copy = folder.resolve(Path.of("rules").relativize(file).toString());
        Files.createDirectories(copy.getParent());
        Files.copy(file, copy);
      }
      return new BookCopy(folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public String text(String file) {
    try {
      return Files.readString(folder.resolve(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public void write(String file, String text) {
    try {
      Files.writeString(folder.resolve(file), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public void delete(String file) {
    try {
      Files.delete(folder.resolve(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Puts a text in place of the first of another, which must be there.
   *
   * @return the line where it stands, from 1
   */
  public int put(String file, String old, String now) {
    String text = text(file);
    int at = text.indexOf(old);
    if (at < 0) {
      throw new AssertionError(file + " holds no \"" + old + "\"");
    }
    write(file, text.substring(0, at) + now + text.substring(at + old.length()));
    return 1 + (int) (text.substring(0, at) + now).lines().count() - (int) now.lines().count();
  }

  /** The first line that holds a text, from 1. */
  public int line(String file, String held) {
    List<String> lines = text(file).lines().toList();
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).contains(held)) {
        return i + 1;
      }
    }
    throw new AssertionError(file + " holds no \"" + held + "\"");
  }
}
