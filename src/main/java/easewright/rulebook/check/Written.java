package easewright.rulebook.check;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.pattern.SourceLines;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.yaml.snakeyaml.error.MarkedYAMLException;

/**
 * A YAML text of the book with the line of each of its places. One that cannot be read is missing,
 * and its problem is reported where it was read.
 */
record Written(String file, int firstLine, JsonNode tree, SourceLines lines) {
  private static final YAMLMapper YAML =
      new YAMLMapper(
          YAMLFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build());

  /**
   * Reads a text.
   *
   * @param firstLine the line of the file where the text begins
   * @param problems gets what keeps it from being read
   */
  static Written read(String file, int firstLine, String text, List<BookProblem> problems) {
    try {
      JsonNode tree = YAML.readTree(text);
      try (JsonParser parser = YAML.createParser(text)) {
        return new Written(
            file,
            firstLine,
            tree == null ? MissingNode.getInstance() : tree,
            SourceLines.of(parser));
      }
    } catch (JsonProcessingException unreadable) {
      problems.add(problem(file, firstLine, unreadable));
      return new Written(file, firstLine, MissingNode.getInstance(), null);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible); // the text is already here
    }
  }

  private static BookProblem problem(String file, int firstLine, JsonProcessingException met) {
    int line = met.getLocation() == null ? 1 : met.getLocation().getLineNr();
    String problem = met.getOriginalMessage();
    if (met.getCause() instanceof MarkedYAMLException marked && marked.getProblemMark() != null) {
      line = marked.getProblemMark().getLine() + 1;
      problem = marked.getProblem();
    }
    return new BookProblem(
        file,
        firstLine + line - 1,
        "This cannot be read as YAML: " + problem.lines().findFirst().orElse("") + ".",
        "Indent by spaces, quote text that holds \": \" or \"#\", write each key once.");
  }

  boolean isReadable() {
    return lines != null;
  }

  /** The line of the file where a place stands, by its JSON Pointer. */
  int line(String pointer) {
    return lines == null ? firstLine : firstLine + lines.line(pointer).orElse(1) - 1;
  }

  BookProblem problem(String pointer, String problem, String remedy) {
    return new BookProblem(file, line(pointer), problem, remedy);
  }
}
