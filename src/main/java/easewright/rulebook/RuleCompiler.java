package easewright.rulebook;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.drools.compiler.kie.builder.impl.InternalKieModule;
import org.drools.drl.parser.lang.dsl.DSLTokenizedMappingFile;
import org.drools.drl.parser.lang.dsl.DefaultExpander;
import org.drools.model.codegen.ExecutableModelProject;
import org.kie.api.KieServices;
import org.kie.api.builder.KieBuilder;
import org.kie.api.builder.KieFileSystem;
import org.kie.api.builder.Message;

/**
 * Turns rule files into Java classes of the engine's executable model. The classes become part of
 * the application, so that starting it compiles and unpacks nothing.
 */
final class RuleCompiler {
  private static final String PACKAGE = "easewright.rules.sportsbra";
  private static final String HEADER =
      "package "
          + PACKAGE
          + "\nimport easewright.rulebook.facts.*\n"
          + "global easewright.rulebook.Statements book\n";
  private static final Pattern PARAMETER = Pattern.compile("parameter\\(\"([^\"]+)\"\\)");

  private RuleCompiler() {}

  /**
   * Compiled rules.
   *
   * @param model name of the class that lists every rule
   * @param classes class name to bytes
   */
  record Compiled(String model, Map<String, byte[]> classes) {}

  static Compiled compile(RuleBookSource source) {
    KieServices services = KieServices.get();
    KieFileSystem files = services.newKieFileSystem();
    source
        .files()
        .forEach(
            (id, text) ->
                files.write(
                    "src/main/resources/" + PACKAGE.replace('.', '/') + "/" + id + ".drl",
                    HEADER + drl(id, text, source)));
    KieBuilder builder = services.newKieBuilder(files).buildAll(ExecutableModelProject.class);
    List<Message> errors = builder.getResults().getMessages(Message.Level.ERROR);
    if (!errors.isEmpty()) {
      throw new RuleBookFault(
          errors.stream()
              .map(error -> error.getPath() + ": " + error.getText())
              .limit(20)
              .collect(Collectors.joining("\n", "The rules do not compile:\n", "")));
    }
    return compiled((InternalKieModule) builder.getKieModule());
  }

  private static Compiled compiled(InternalKieModule module) {
    Map<String, byte[]> classes = new TreeMap<>();
    String model = null;
    for (String file : module.getFileNames()) {
      if (file.endsWith(".class") && file.startsWith(PACKAGE.replace('.', '/'))) {
        classes.put(
            file.substring(0, file.length() - ".class".length()).replace('/', '.'),
            module.getBytes(file));
      } else if (file.endsWith("/drools-model")) {
        model =
            new String(module.getBytes(file), StandardCharsets.UTF_8)
                .lines()
                .filter(line -> line.startsWith(PACKAGE))
                .findFirst()
                .orElseThrow();
      }
    }
    return new Compiled(model, classes);
  }

  private static String drl(String id, String text, RuleBookSource source) {
    DefaultExpander expander = new DefaultExpander();
    try {
      DSLTokenizedMappingFile dsl = new DSLTokenizedMappingFile();
      if (!dsl.parseAndLoad(new StringReader(source.vocabulary()))) {
        throw new RuleBookFault("vocabulary.dsl: " + dsl.getErrors());
      }
      expander.addDSLMapping(dsl.getMapping());
    } catch (IOException e) {
      throw new RuleBookFault("vocabulary.dsl cannot be read: " + e.getMessage());
    }
    String expanded = expander.expand(RuleReader.forEngine(id, text));
    if (expander.hasErrors()) {
      throw new RuleBookFault(
          id
              + ".dslr has a sentence the vocabulary does not know: "
              + expander.getErrors().stream()
                  .map(Object::toString)
                  .collect(Collectors.joining("; ")));
    }
    return PARAMETER
        .matcher(expanded)
        .replaceAll(found -> Double.toString(source.parameter(found.group(1))));
  }
}
