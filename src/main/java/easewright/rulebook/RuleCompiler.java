package easewright.rulebook;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.drools.compiler.kie.builder.impl.InternalKieModule;
import org.drools.drl.parser.lang.dsl.DSLMapping;
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
          + "global easewright.rulebook.Conclusions book\n";
  private static final Pattern PARAMETER = Pattern.compile("parameter\\(\"([^\"]+)\"\\)");

  private RuleCompiler() {}

  /**
   * Compiled rules.
   *
   * @param model name of the class that lists every rule
   * @param classes class name to bytes
   */
  record Compiled(String model, Map<String, byte[]> classes) {}

  /** Each rule file as the engine reads it: sentences spelt out, parameters as numbers. */
  static Map<String, String> spelledOut(RuleBookSource source) {
    DSLMapping sentences = sentences(source.vocabulary());
    Map<String, String> files = new TreeMap<>();
    source.files().forEach((id, text) -> files.put(id, spelledOut(id, text, source, sentences)));
    return files;
  }

  /** A short mark of a spelled-out file, by which to tell whether it must be compiled anew. */
  static String mark(String spelledOut) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(spelledOut.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Compiles rule files.
   *
   * @param spelledOut file id to its text as the engine reads it; not empty
   * @param source the book they are of
   * @throws RuleBookFault naming what does not compile, or a comparison that answers would not show
   */
  static Compiled compile(Map<String, String> spelledOut, RuleBookSource source) {
    ShownComparisons told = new ShownComparisons(source);
    spelledOut.forEach(told::check);
    KieServices services = KieServices.get();
    KieFileSystem files = services.newKieFileSystem();
    spelledOut.forEach(
        (id, text) ->
            files.write(
                "src/main/resources/" + PACKAGE.replace('.', '/') + "/" + id + ".drl",
                HEADER + text));
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

  private static DSLMapping sentences(String vocabulary) {
    try {
      DSLTokenizedMappingFile dsl = new DSLTokenizedMappingFile();
      if (!dsl.parseAndLoad(new StringReader(vocabulary))) {
        throw new RuleBookFault("vocabulary.dsl: " + dsl.getErrors());
      }
      return dsl.getMapping();
    } catch (IOException e) {
      throw new RuleBookFault("vocabulary.dsl cannot be read: " + e.getMessage());
    }
  }

  private static String spelledOut(
      String id, String text, RuleBookSource source, DSLMapping sentences) {
    DefaultExpander expander = new DefaultExpander();
    expander.addDSLMapping(sentences);
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
