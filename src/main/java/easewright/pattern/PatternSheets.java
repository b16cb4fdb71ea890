package easewright.pattern;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.LoaderOptions;

/** The pattern sheets that come with the service, and the reading of any other. */
public final class PatternSheets {

  private static final String FOLDER = "/easewright/patterns/";

  private static final int MOST_CHARACTERS = 400_000;

  private static final StreamReadConstraints DEPTH =
      StreamReadConstraints.builder().maxNestingDepth(20).build();

  /** Building the schema is dear and only strangers' sheets need it, so it waits for the first. */
  private static final class OnDemand {
    private static final SheetSchema SCHEMA = new SheetSchema();
  }

  private final ObjectMapper yaml;
  private final ObjectMapper json;
  private final Map<String, PatternSheet> shipped = new LinkedHashMap<>();

  /**
   * Loads the sheets named in {@code easewright/patterns/index.txt}. They are trusted: the tests
   * read each of them as a stranger's, so that starting need not.
   */
  public PatternSheets() {
    LoaderOptions limits = new LoaderOptions();
    limits.setCodePointLimit(MOST_CHARACTERS);
    // Aliases need no limit: this parser reads them as text, which the schema then refuses.
    yaml =
        new ObjectMapper(
            YAMLFactory.builder()
                .loaderOptions(limits)
                .streamReadConstraints(DEPTH)
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .build());
    json =
        JsonMapper.builder(
                JsonFactory.builder()
                    .streamReadConstraints(DEPTH)
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();
    for (String name : resource("index.txt").lines().filter(line -> !line.isBlank()).toList()) {
      PatternSheet sheet = trusted(resource(name));
      shipped.put(sheet.id(), sheet);
    }
  }

  private PatternSheet trusted(String text) {
    try {
      return SheetReader.read(new SheetNode(yaml.readTree(text), "", new ArrayList<>()));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** The shipped sheets, in the order of the index. */
  public List<PatternSheet> shipped() {
    return List.copyOf(shipped.values());
  }

  /** The shipped sheet with an id. */
  public Optional<PatternSheet> find(String id) {
    return Optional.ofNullable(shipped.get(id));
  }

  /**
   * Reads a sheet written in YAML (or JSON, which is YAML too).
   *
   * @throws SheetFaults with every fault found; faults of shape are named before those of sense
   */
  public PatternSheet readYaml(String text) {
    return read(yaml, text, "as YAML", "Write plain YAML without aliases and with each key once.");
  }

  /**
   * Reads a sheet written in JSON.
   *
   * @throws SheetFaults with every fault found; faults of shape are named before those of sense
   */
  public PatternSheet readJson(String text) {
    return read(json, text, "as JSON", "Check quotes, commas and brackets near there (RFC 8259).");
  }

  private PatternSheet read(ObjectMapper form, String text, String as, String remedy) {
    try {
      JsonNode sheet = form.readTree(text);
      return read(sheet == null || sheet.isMissingNode() ? NullNode.getInstance() : sheet);
    } catch (SheetFaults found) {
      throw new SheetFaults(located(form, text, found.faults()));
    } catch (JsonProcessingException unreadable) {
      JsonLocation place = unreadable.getLocation();
      throw SheetFaults.unreadable(
          new SheetFault(
              "",
              Optional.ofNullable(place).map(JsonLocation::getLineNr).filter(line -> line > 0),
              "The sheet cannot be read " + as + ": " + firstLine(unreadable.getOriginalMessage()),
              remedy));
    }
  }

  /** The faults in the order of the text, each with its line. */
  private static List<SheetFault> located(ObjectMapper form, String text, List<SheetFault> faults) {
    try (JsonParser parser = form.createParser(text)) {
      SourceLines lines = SourceLines.of(parser);
      return faults.stream()
          .map(fault -> fault.at(lines.line(fault.pointer())))
          .sorted(Comparator.comparing(fault -> fault.line().orElse(0)))
          .toList();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible); // the same text was read a moment ago
    }
  }

  /**
   * Reads a sheet from JSON, already parsed.
   *
   * @throws SheetFaults with every fault found; faults of shape are named before those of sense
   */
  public PatternSheet read(JsonNode json) {
    List<SheetFault> faults = new ArrayList<>(OnDemand.SCHEMA.faults(json));
    if (!faults.isEmpty()) {
      throw new SheetFaults(faults);
    }
    SheetNode root = new SheetNode(json, "", faults);
    PatternSheet sheet = SheetReader.read(root);
    if (whole(sheet, root)) {
      int before = faults.size();
      new SheetCheck(sheet, root).run();
      new SeamNames(sheet, root).run();
      // Seams are compared by what names name, so the names must be sound.
      if (faults.size() == before) {
        everyWay(sheet, root);
      }
      new PieceCheck(sheet, root).run();
      new TrimCheck(sheet, root).run();
    }
    if (!faults.isEmpty()) {
      throw new SheetFaults(faults);
    }
    return sheet;
  }

  private static void everyWay(PatternSheet sheet, SheetNode root) {
    long ways = Ways.count(sheet.choices());
    if (ways > Ways.MOST) {
      root.at("choices")
          .fault(
              "The choices combine in " + ways + " ways; at most " + Ways.MOST + " are read.",
              "Offer fewer choices, or split the pattern into two sheets.");
      return;
    }
    List<Map<String, String>> allowed = Ways.allowed(sheet.choices());
    new ReachCheck(sheet, root, allowed).run();
    new SeamCheck(sheet, root, allowed).run();
  }

  // A part the reader refused would shift the places of those behind it, or leave a hole.
  private static boolean whole(PatternSheet sheet, SheetNode root) {
    List<SheetNode> pieces = root.each("pieces");
    if (sheet.sizes().isEmpty()
        || sheet.pieces().size() != pieces.size()
        || sheet.trims().size() != root.each("trims").size()
        || sheet.sizes().stream().map(size -> size.finishedMm().keySet()).distinct().count() > 1) {
      return false;
    }
    for (int i = 0; i < pieces.size(); i++) {
      Piece piece = sheet.pieces().get(i);
      if (piece.follows().isEmpty() && piece.edges().size() != pieces.get(i).each("edges").size()) {
        return false;
      }
    }
    return true;
  }

  private static String firstLine(String message) {
    return message.lines().findFirst().orElse("") + ".";
  }

  private static String resource(String name) {
    try (InputStream stream = PatternSheets.class.getResourceAsStream(FOLDER + name)) {
      if (stream == null) {
        throw new IllegalStateException("The pattern sheet '" + name + "' is not shipped.");
      }
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
