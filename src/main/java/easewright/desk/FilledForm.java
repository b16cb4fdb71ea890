package easewright.desk;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode.OverwriteMode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.request.Fault;
import easewright.request.FaultyRequest;
import io.netty.handler.codec.http.QueryStringDecoder;
import jakarta.ws.rs.BadRequestException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The values and the faults of a form. Immutable. */
public final class FilledForm {
  /** Value of a ticked checkbox. */
  static final String YES = "yes";

  /** Fields of small requests that are numbers in JSON. */
  private static final List<String> COUNTS = List.of("/version", "/retentionDays");

  /** Far more than any page has. */
  private static final int MOST_FIELDS = 2000;

  private final Map<String, List<String>> fields;
  private final List<Fault> faults;

  private FilledForm(Map<String, List<String>> fields, List<Fault> faults) {
    this.fields = fields;
    this.faults = faults;
  }

  /** An empty form. */
  public static FilledForm blank() {
    return new FilledForm(Map.of(), List.of());
  }

  /**
   * Parses what a browser sends (application/x-www-form-urlencoded). By netty's decoder: the
   * framework's would need its limit of 2 KB a field raised for every resource.
   *
   * @throws BadRequestException where an escape is none, which no browser sends
   */
  public static FilledForm of(byte[] body) {
    Map<String, List<String>> fields = new LinkedHashMap<>();
    try {
      new QueryStringDecoder(new String(body, UTF_8), UTF_8, false, MOST_FIELDS, true)
          .parameters()
          .forEach(
              (name, values) -> fields.put(name, values.stream().map(FilledForm::tidy).toList()));
    } catch (IllegalArgumentException badEscape) {
      throw new BadRequestException(badEscape);
    }
    return new FilledForm(fields, List.of());
  }

  private static String tidy(String value) {
    return value.replace("\r\n", "\n").strip();
  }

  /** The same form with its faults. */
  FilledForm refused(FaultyRequest refusal) {
    return new FilledForm(fields, refusal.faults());
  }

  /** The same form with the values of some fields replaced. */
  FilledForm with(Map<String, List<String>> replacements) {
    Map<String, List<String>> changed = new LinkedHashMap<>(fields);
    changed.putAll(replacements);
    return new FilledForm(changed, faults);
  }

  /** Every value of a field that is not blank. */
  public List<String> values(String name) {
    return fields.getOrDefault(name, List.of()).stream().filter(one -> !one.isBlank()).toList();
  }

  /** The first value of a field, or "". */
  public String value(String name) {
    return value(name, 0);
  }

  /** One of several values of the same field, or "". */
  public String value(String name, int index) {
    List<String> all = fields.getOrDefault(name, List.of());
    return index < all.size() ? all.get(index) : "";
  }

  /** Whether a field was sent, even empty. */
  boolean has(String name) {
    return fields.containsKey(name);
  }

  /** Whether a checkbox is ticked or an option chosen. */
  public boolean holds(String name, String value) {
    return values(name).contains(value);
  }

  /** Whether a flag is set. */
  public boolean ticked(String name) {
    return holds(name, YES);
  }

  /** Whether any of these fields is filled in. */
  public boolean isFilled(List<String> names) {
    return names.stream().anyMatch(name -> !values(name).isEmpty());
  }

  /** Whether any field below a pointer is filled in, or has a fault. */
  public boolean isFilledUnder(String pointer) {
    return fields.keySet().stream()
            .anyMatch(name -> name.startsWith(pointer) && !values(name).isEmpty())
        || faults.stream().anyMatch(fault -> fault.pointer().startsWith(pointer));
  }

  /** The HTML id of a field. */
  public String id(String name) {
    return name.replaceAll("^/", "").replace('/', '-');
  }

  /** The faults of a field. */
  public List<Fault> faults(String name) {
    return faults.stream().filter(fault -> isAt(fault, name)).toList();
  }

  /** The faults that belong to no field of this page. */
  public List<Fault> faultsElsewhere(List<String> names) {
    return faults.stream()
        .filter(fault -> names.stream().noneMatch(name -> isAt(fault, name)))
        .toList();
  }

  /** For pages that list all faults in one place. */
  public List<String> noFields() {
    return List.of();
  }

  /** Whether the form has faults. */
  public boolean isFaulty() {
    return !faults.isEmpty();
  }

  private static boolean isAt(Fault fault, String name) {
    return fault.pointer().equals(name) || fault.pointer().startsWith(name + "/");
  }

  /**
   * Puts the fields into a request at the pointers they are named after; omits blank fields and
   * unset flags.
   *
   * @param into the request, modified in place
   */
  ObjectNode put(List<Field> filled, List<String> flags, ObjectNode into) {
    boolean inches = value("units").equals("imperial");
    for (Field field : filled) {
      List<String> values =
          values(field.pointer()).stream().map(one -> field.written(one, inches)).toList();
      JsonPointer at = JsonPointer.compile(field.pointer());
      if (values.size() == 1) {
        parent(into, at).put(at.last().getMatchingProperty(), values.get(0));
      } else if (!values.isEmpty()) {
        ArrayNode list = parent(into, at).putArray(at.last().getMatchingProperty());
        values.forEach(list::add);
      }
    }
    for (String flag : flags) {
      JsonPointer at = JsonPointer.compile(flag);
      if (ticked(flag)) {
        parent(into, at).put(at.last().getMatchingProperty(), true);
      }
    }
    if (!value("units").isEmpty()) {
      into.put("units", value("units"));
    }
    return into;
  }

  /** The same, into an empty request. */
  ObjectNode put(List<Field> filled, List<String> flags) {
    return put(filled, flags, JsonNodeFactory.instance.objectNode());
  }

  /**
   * A small request of text fields named by their pointers; omits blank ones.
   *
   * @return a new request
   */
  ObjectNode json(String... pointers) {
    ObjectNode request = JsonNodeFactory.instance.objectNode();
    for (String pointer : pointers) {
      String value = value(pointer);
      String name = pointer.substring(1);
      if (COUNTS.contains(pointer) && value.matches("[0-9]{1,9}")) {
        request.put(name, Integer.parseInt(value));
      } else if (!value.isEmpty()) {
        request.put(name, value);
      }
    }
    return request;
  }

  /** A numeric field; 0 if it is not a number. */
  int number(String name) {
    return value(name).matches("[0-9]{1,9}") ? Integer.parseInt(value(name)) : 0;
  }

  private static ObjectNode parent(ObjectNode root, JsonPointer at) {
    return at.head().matches() ? root : root.withObject(at.head(), OverwriteMode.ALL, true);
  }
}
