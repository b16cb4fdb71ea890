package easewright.rulebook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Map;
import java.util.stream.Stream;

/** Build step: compiles the rule book into the application's classes. */
public final class RuleBookBuild {
  private RuleBookBuild() {}

  /**
   * @param args the rule book's folder and the folder for classes
   */
  public static void main(String[] args) throws IOException {
    Path classes = Path.of(args[1]);
    RuleBookSource source = RuleBookSource.read(Path.of(args[0]));
    Path target = classes.resolve("easewright/rulebook");
    Path hash = target.resolve("book.hash");
    byte[] book = source.write();
    Files.createDirectories(target);
    Files.write(target.resolve("book.json"), book);
    if (Files.exists(hash) && Files.readString(hash).equals(source.hash())) {
      return;
    }
    clear(classes.resolve("easewright/rules"));
    Map<String, String> spelledOut = RuleCompiler.spelledOut(source);
    RuleCompiler.Compiled compiled = RuleCompiler.compile(spelledOut, source);
    for (Map.Entry<String, byte[]> type : compiled.classes().entrySet()) {
      Path file = classes.resolve(type.getKey().replace('.', '/') + ".class");
      Files.createDirectories(file.getParent());
      Files.write(file, type.getValue());
    }
    Files.writeString(target.resolve("book.model"), compiled.model());
    StringBuilder marks = new StringBuilder();
    spelledOut.forEach(
        (id, text) -> marks.append(id).append(' ').append(RuleCompiler.mark(text)).append('\n'));
    Files.writeString(target.resolve("book.files"), marks);
    Files.writeString(hash, source.hash());
  }

  private static void clear(Path folder) throws IOException {
    if (Files.isDirectory(folder)) {
      try (Stream<Path> walk = Files.walk(folder)) {
        for (Path path : walk.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(path);
        }
      }
    }
  }
}
