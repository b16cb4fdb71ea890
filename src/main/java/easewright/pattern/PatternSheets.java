package easewright.pattern;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The pattern sheets shipped with the service, and the parser for others. */
public final class PatternSheets {

  private static final String FOLDER = "/easewright/patterns/";

  /**
   * Building the schema is slow and only uploaded sheets need it, so it is built for the first one.
   */
  private static final class OnDemand {
    private static final SheetSchema SCHEMA = new SheetSchema();
  }

  private final SheetText yaml = SheetText.yaml();
  private final SheetText json = SheetText.json();
  private final Map<String, PatternSheet> shipped = new LinkedHashMap<>();
  private final SentSheets sent = new SentSheets();

  /**
   * Loads the sheets named in {@code easewright/patterns/index.txt}. They are trusted: tests
   * validate each of them like an uploaded sheet, so start-up need not.
   */
  public PatternSheets() {
    for (String name : resource("index.txt").lines().filter(line -> !line.isBlank()).toList()) {
      PatternSheet sheet = trusted(resource(name));
      shipped.put(sheet.id(), sheet);
    }
  }

  private PatternSheet trusted(String text) {
    return SheetReader.read(new SheetNode(yaml.read(text), "", new ArrayList<>()));
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
   * @throws SheetFaults with every fault found; structural faults come before semantic ones
   */
  public PatternSheet readYaml(String text) {
    return read(yaml, text);
  }

  /**
   * Reads a sheet written in JSON.
   *
   * @throws SheetFaults with every fault found; structural faults come before semantic ones
   */
  public PatternSheet readJson(String text) {
    return read(json, text);
  }

  private PatternSheet read(SheetText form, String text) {
    JsonNode sheet = form.read(text);
    try {
      return read(sheet);
    } catch (SheetFaults found) {
      throw new SheetFaults(form.located(text, found.faults()));
    }
  }

  /** The sheets that were sent along most recently. */
  public SentSheets sent() {
    return sent;
  }

  /**
   * Reads a sheet that was sent along, and keeps it for the next request; one that is kept needs no
   * reading.
   *
   * @throws SheetFaults as {@link #read(JsonNode)} does
   */
  public PatternSheet readSent(JsonNode json) {
    String name = SentSheets.nameOf(json);
    return sent.find(name)
        .map(SentSheets.Sent::sheet)
        .orElseGet(
            () -> {
              PatternSheet sheet = read(json);
              sent.keep(name, new SentSheets.Sent(json.deepCopy(), sheet));
              return sheet;
            });
  }

  /**
   * Reads a sheet from parsed JSON.
   *
   * @throws SheetFaults with every fault found; structural faults come before semantic ones
   */
  public PatternSheet read(JsonNode json) {
    List<SheetFault> faults = new ArrayList<>(SheetBounds.faults(json));
    if (faults.isEmpty()) {
      faults.addAll(OnDemand.SCHEMA.faults(json));
    }
    if (!faults.isEmpty()) {
      throw new SheetFaults(faults);
    }
    SheetNode root = new SheetNode(json, "", faults);
    PatternSheet sheet = SheetReader.read(root);
    if (whole(sheet, root)) {
      int before = faults.size();
      SheetCheck check = new SheetCheck(sheet, root);
      check.names();
      new SeamNames(sheet, root).run();
      // Comparing seams requires valid names.
      if (faults.size() == before) {
        everyWay(sheet, root);
      }
      check.sense();
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
      root.at("choices").fault("too-many-ways", "ways", ways, "most", Ways.MOST);
      return;
    }
    List<Map<String, String>> allowed = Ways.allowed(sheet.choices());
    new ReachCheck(sheet, root, allowed).run();
    new SeamCheck(sheet, root, allowed).run();
  }

  // A part the reader rejected would shift the positions of later ones, or leave a gap.
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
