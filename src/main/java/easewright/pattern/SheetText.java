package easewright.pattern;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.error.MarkedYAMLException;

/** A text format of sheets, YAML or JSON, which also locates faults in the text. */
final class SheetText {

  private static final int MOST_CHARACTERS = 400_000;

  private static final int DEEPEST = 20;

  private static final String WRITTEN_TWICE = "Duplicate field";

  private static final StreamReadConstraints BOUNDS =
      StreamReadConstraints.builder()
          .maxNestingDepth(DEEPEST)
          .maxStringLength(SheetBounds.LONGEST_TEXT)
          .maxNumberLength(30)
          .maxNameLength(SheetBounds.LONGEST_NAME)
          .build();

  private final ObjectMapper form;
  private final String name;
  private final String remedy;

  private SheetText(ObjectMapper form, String name, String remedy) {
    this.form = form;
    this.name = name;
    this.remedy = remedy;
  }

  static SheetText yaml() {
    LoaderOptions limits = new LoaderOptions();
    limits.setCodePointLimit(MOST_CHARACTERS);
    // Aliases need no limit: this parser reads them as text, which the schema then rejects.
    return new SheetText(
        YAMLMapper.builder(
                YAMLFactory.builder()
                    .loaderOptions(limits)
                    .streamReadConstraints(BOUNDS)
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build(),
        "YAML",
        "Indent by spaces, quote text that holds \": \" or \"#\", write each key once, use no"
            + " aliases.");
  }

  static SheetText json() {
    return new SheetText(
        JsonMapper.builder(
                JsonFactory.builder()
                    .streamReadConstraints(BOUNDS)
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build(),
        "JSON",
        "Check quotes, commas and brackets near there (RFC 8259).");
  }

  /**
   * The text as a tree.
   *
   * @throws SheetFaults with one fault, if it cannot be read
   */
  JsonNode read(String text) {
    try {
      JsonNode sheet = form.readTree(text);
      return sheet == null || sheet.isMissingNode() ? NullNode.getInstance() : sheet;
    } catch (StreamConstraintsException bound) {
      throw SheetFaults.unreadable(
          new SheetFault(
              "",
              line(bound),
              "The sheet is nested too deep, or a text, name or number in it is too long.",
              "Nest at most %d deep and keep texts under %d characters."
                  .formatted(DEEPEST, SheetBounds.LONGEST_TEXT)));
    } catch (MismatchedInputException more) {
      throw SheetFaults.unreadable(
          new SheetFault(
              "",
              line(more),
              "There is more after the end of the sheet.",
              "Send one sheet, in one document."));
    } catch (JsonProcessingException unreadable) {
      throw SheetFaults.unreadable(fault(unreadable));
    }
  }

  private SheetFault fault(JsonProcessingException unreadable) {
    Optional<Integer> line = line(unreadable);
    // The tree mapper's messages name its classes, except those about duplicate names.
    String said = unreadable.getOriginalMessage();
    String problem =
        said != null && said.startsWith(WRITTEN_TWICE)
            ? said
            : "a name, a value, or the end of one, is expected there";
    // The parser's message starts with what it was doing; what it found, and where, comes after.
    if (unreadable.getCause() instanceof MarkedYAMLException met && met.getProblemMark() != null) {
      line = Optional.of(met.getProblemMark().getLine() + 1);
      problem = met.getProblem();
    }
    String first = problem.lines().findFirst().orElse("");
    return new SheetFault(
        "", line, "The sheet cannot be read as " + name + ": " + first + ".", remedy);
  }

  private static Optional<Integer> line(JsonProcessingException problem) {
    return Optional.ofNullable(problem.getLocation())
        .map(JsonLocation::getLineNr)
        .filter(number -> number > 0);
  }

  /** The faults of a parsed text, in its order and each with its line. */
  List<SheetFault> located(String text, List<SheetFault> faults) {
    try (JsonParser parser = form.createParser(text)) {
      SourceLines lines = SourceLines.of(parser);
      return faults.stream()
          .map(fault -> fault.at(lines.line(fault.pointer())))
          .sorted(Comparator.comparing(fault -> fault.line().orElse(0)))
          .toList();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible); // the same text was parsed before
    }
  }
}
