package easewright.pattern;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The pattern sheets that requests can name: those shipped with the service, and those of its
 * operator; and the parser for others. Thread-safe.
 */
public final class PatternSheets {

  private static final String FOLDER = "/easewright/patterns/";

  private final SheetText yaml = SheetText.yaml();
  private final SheetText json = SheetText.json();
  private final Map<String, Listed> shipped = new LinkedHashMap<>();
  private final SentSheets sent = new SentSheets();
  private volatile Offer offer = new Offer(Map.of(), true);

  /**
   * A sheet that requests can name.
   *
   * @param json the whole sheet as JSON, on one line
   */
  public record Listed(PatternSheet sheet, String json) {}

  /** The operator's sheets by id, and whether the shipped ones are offered beside them. */
  private record Offer(Map<String, Listed> own, boolean shippedToo) {}

  /**
   * Loads the sheets named in {@code easewright/patterns/index.txt}. They are trusted: tests
   * validate each of them like an uploaded sheet, so start-up need not.
   */
  public PatternSheets() {
    for (String name : resource("index.txt").lines().filter(line -> !line.isBlank()).toList()) {
      Listed listed = trusted(resource(name));
      shipped.put(listed.sheet().id(), listed);
    }
  }

  private Listed trusted(String text) {
    JsonNode sheet = yaml.read(text);
    return new Listed(
        SheetReader.read(new SheetNode(sheet, "", new ArrayList<>())), sheet.toString());
  }

  /** The shipped sheets, in the order of the index. */
  public List<PatternSheet> shipped() {
    return sheets(shipped);
  }

  /** The sheets that lists and choices offer: the operator's own, then the shipped ones. */
  public List<PatternSheet> offered() {
    Offer now = offer;
    return now.shippedToo() ? joined(sheets(now.own()), shipped()) : sheets(now.own());
  }

  /** The same, with the one of this id too if it is known, so that no choice loses it. */
  public List<PatternSheet> offeredWith(String id) {
    List<PatternSheet> offered = offered();
    return find(id)
        .filter(chosen -> offered.stream().noneMatch(one -> one.id().equals(id)))
        .map(chosen -> joined(offered, List.of(chosen)))
        .orElse(offered);
  }

  /**
   * Every sheet that a request can name: those offered, and the shipped ones in any case, since
   * stored fittings, examples and the cases of rules name them.
   */
  public List<PatternSheet> known() {
    return joined(sheets(offer.own()), shipped());
  }

  /** The known sheet with an id. */
  public Optional<PatternSheet> find(String id) {
    return listed(id).map(Listed::sheet);
  }

  /** The same with its JSON. */
  public Optional<Listed> listed(String id) {
    Listed own = offer.own().get(String.valueOf(id));
    return Optional.ofNullable(own == null ? shipped.get(id) : own);
  }

  /**
   * Offers the operator's own sheets from now on, in this order and instead of those before.
   *
   * @param own sheets with ids of their own: none twice, none of a shipped sheet
   * @param shippedToo whether the shipped ones are offered after them
   */
  public void offer(List<Listed> own, boolean shippedToo) {
    Map<String, Listed> byId = new LinkedHashMap<>();
    own.forEach(one -> byId.put(one.sheet().id(), one));
    offer = new Offer(Collections.unmodifiableMap(byId), shippedToo);
  }

  private static List<PatternSheet> sheets(Map<String, Listed> listed) {
    return listed.values().stream().map(Listed::sheet).toList();
  }

  private static List<PatternSheet> joined(List<PatternSheet> first, List<PatternSheet> then) {
    return Stream.concat(first.stream(), then.stream()).toList();
  }

  /**
   * Reads a sheet written in YAML (or JSON, which is YAML too).
   *
   * @throws SheetFaults with every fault found; structural faults come before semantic ones
   */
  public PatternSheet readYaml(String text) {
    return read(yaml, text).sheet();
  }

  /**
   * Reads a sheet written in JSON.
   *
   * @throws SheetFaults with every fault found; structural faults come before semantic ones
   */
  public PatternSheet readJson(String text) {
    return read(json, text).sheet();
  }

  /**
   * Reads a sheet that is to be offered, in YAML or JSON.
   *
   * @throws SheetFaults with every fault found; structural faults come before semantic ones
   */
  public Listed readToOffer(String text) {
    return read(text.stripLeading().startsWith("{") ? json : yaml, text);
  }

  private Listed read(SheetText form, String text) {
    JsonNode sheet = form.read(text);
    try {
      return new Listed(read(sheet), sheet.toString());
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
    return SheetChecks.read(json);
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
