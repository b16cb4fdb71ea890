package easewright.rulebook;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.drools.model.Model;
import org.drools.model.Rule;

/** Rules as the engine takes them: those compiled into the application, and changed ones. */
final class RuleModels {
  private RuleModels() {}

  /** The book whose rules were compiled into the application. */
  static RuleBookSource sourceCompiledIn() {
    try (InputStream book = resource("book.json")) {
      return RuleBookSource.read(book);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The rules compiled into the application. */
  static Model compiledIn() {
    return model(text("book.model").strip(), RuleModels.class.getClassLoader());
  }

  /**
   * The rules of any book. Only files that differ from those compiled into the application are
   * compiled; a file differs too where a parameter or a sentence it uses does.
   */
  static Model of(RuleBookSource source) {
    Map<String, String> changed = new HashMap<>(RuleCompiler.spelledOut(source));
    Map<String, String> kept = new HashMap<>();
    marks()
        .forEach(
            (file, mark) -> {
              if (changed.containsKey(file) && RuleCompiler.mark(changed.get(file)).equals(mark)) {
                kept.put(file, changed.remove(file));
              }
            });
    List<Rule> rules = new ArrayList<>();
    Model any = compiledIn();
    any.getRules().stream()
        .filter(rule -> kept.containsKey(rule.getName().split("/")[0]))
        .forEach(rules::add);
    if (!changed.isEmpty()) {
      RuleCompiler.Compiled compiled = RuleCompiler.compile(changed, source);
      any = model(compiled.model(), new RuleClasses(compiled.classes()));
      rules.addAll(any.getRules());
    }
    return new FamilyModel(any, rules);
  }

  /** File id to the mark of what was compiled into the application. */
  private static Map<String, String> marks() {
    return text("book.files")
        .lines()
        .map(line -> line.split(" "))
        .collect(Collectors.toMap(pair -> pair[0], pair -> pair[1]));
  }

  private static String text(String resource) {
    try (InputStream stream = resource(resource)) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static InputStream resource(String name) {
    InputStream found = RuleModels.class.getResourceAsStream(name);
    if (found == null) {
      throw new RuleBookFault("The compiled rule book is missing; run the build (mvn compile).");
    }
    return found;
  }

  private static Model model(String name, ClassLoader loader) {
    try {
      return (Model) loader.loadClass(name).getDeclaredConstructor().newInstance();
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("The compiled rules cannot be loaded.", e);
    }
  }
}
