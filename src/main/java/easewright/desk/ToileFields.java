package easewright.desk;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What was measured, tried and sewn before, as fields of the form. Each is named after the pointer
 * of its value; a list has a few rows, which are added to what was told earlier.
 */
final class ToileFields {
  /** Rows of each list in one message. */
  static final int ROWS = 2;

  /** Areas in which all is well; several checkboxes of this name. */
  static final String FINE = "/fine";

  private static final String SIZE_CUT = "/sizeCut";
  private static final String SIZE_SYSTEM = "/sizeSystem";
  private static final String SEAMS_AROUND = "/design/seamsAround";

  /** States that the fields show what was told earlier, so that an empty one withdraws it. */
  private static final String SHOWN = "fieldsShown";

  private static final List<Field> PLAIN =
      List.of(
          Field.length("/body/bust"),
          Field.length("/body/underbust"),
          Field.length("/body/bustLeft"),
          Field.length("/body/bustRight"),
          Field.text("/measuredBy"),
          Field.length("/garment/underband"),
          Field.length("/garment/bust"),
          Field.length("/garment/bandCloth"),
          Field.width("/garment/strapWidth"),
          Field.length("/garment/strapLength"),
          Field.text(SIZE_CUT),
          Field.text(SIZE_SYSTEM),
          Field.text("/design/back"),
          Field.text("/design/closing"),
          Field.text("/design/front"),
          Field.text("/design/supportLayer"),
          Field.text("/design/lining"),
          new Field("/design/stretchAsked", "%", "%"),
          Field.width("/design/seamAllowance"),
          Field.text(SEAMS_AROUND),
          Field.length("/design/drafted/underband"),
          Field.length("/design/drafted/bust"));

  /** How the tape was held, by the field of the girth; the halves of a bust are held as it is. */
  private static final Map<String, List<String>> HELD =
      Map.of("/body/bust", List.of("over", "tape"), "/body/underbust", List.of("tape", "breath"));

  private static final Map<String, List<Field>> LISTS =
      Map.of(
          "/trials",
          List.of(
              Field.text("adjustment"),
              Field.length("amount"),
              Field.text("how"),
              Field.text("outcome")),
          "/earlier",
          List.of(
              Field.text("adjustment"),
              Field.text("size"),
              Field.length("amount"),
              Field.text("outcome"),
              Field.text("better"),
              Field.text("worse")),
          "/garment/edges",
          List.of(
              Field.text("edge"),
              Field.length("length"),
              Field.length("elastic/cut"),
              Field.width("elastic/width"),
              Field.text("elastic/kind"),
              Field.text("elastic/putOn")));

  /** Fields of rows that hold a name of the rule book. */
  private static final List<String> NAMES = List.of("adjustment", "better", "worse");

  private static final List<String> SEVERAL = List.of("better", "worse");

  private ToileFields() {}

  /** Names of all fields. */
  static List<String> names() {
    return Stream.of(
            PLAIN.stream().map(Field::pointer),
            HELD.entrySet().stream()
                .flatMap(girth -> girth.getValue().stream().map(way -> held(girth.getKey(), way))),
            rowNames().stream(),
            Stream.of(FINE))
        .flatMap(names -> names)
        .toList();
  }

  private static List<String> rowNames() {
    return LISTS.entrySet().stream()
        .flatMap(
            list ->
                IntStream.range(0, ROWS)
                    .boxed()
                    .flatMap(
                        row -> list.getValue().stream().map(one -> cell(list.getKey(), row, one))))
        .toList();
  }

  private static String held(String girth, String way) {
    return girth + "/" + way;
  }

  private static String cell(String list, int row, Field field) {
    return list + "/" + row + "/" + field.pointer();
  }

  /**
   * The same form with ids for the names in its rows; what is no name stays as written.
   *
   * @param ids id by name
   */
  static FilledForm named(FilledForm form, Map<String, String> ids) {
    Map<String, List<String>> named = new HashMap<>();
    for (String name : rowNames()) {
      String written = form.value(name);
      if (!written.isEmpty() && NAMES.contains(name.substring(name.lastIndexOf('/') + 1))) {
        named.put(name, List.of(ids.getOrDefault(written.toLowerCase(Locale.ROOT), written)));
      }
    }
    return form.with(named);
  }

  /** Adds what the fields say to a request. */
  static void put(FilledForm form, ObjectNode request) {
    if (form.ticked(SHOWN)) {
      PLAIN.forEach(field -> withdraw(form, request, field.pointer()));
      request.remove(FINE.substring(1));
    }
    form.put(PLAIN, List.of(), request);
    number(request, SEAMS_AROUND);
    HELD.forEach((girth, ways) -> putHeld(form, request, girth, ways));
    if (!form.values(FINE).isEmpty()) {
      form.values(FINE).forEach(request.withArray(FINE)::add);
    }
    LISTS.forEach((list, fields) -> putRows(form, request, list, fields));
  }

  /** An earlier value that its field showed, and that was emptied. */
  private static void withdraw(FilledForm form, ObjectNode request, String pointer) {
    JsonPointer at = JsonPointer.compile(pointer);
    if (form.has(pointer)
        && form.value(pointer).isEmpty()
        && shown(request.at(at)) != null
        && request.at(at.head()) instanceof ObjectNode parent) {
      parent.remove(at.last().getMatchingProperty());
    }
  }

  private static void number(ObjectNode request, String pointer) {
    JsonPointer at = JsonPointer.compile(pointer);
    String text = request.at(at).textValue();
    if (text != null
        && text.matches("[0-9]{1,4}")
        && request.at(at.head()) instanceof ObjectNode parent) {
      parent.put(at.last().getMatchingProperty(), Integer.parseInt(text));
    }
  }

  private static void putHeld(
      FilledForm form, ObjectNode request, String girth, List<String> ways) {
    ObjectNode body = request.get("body") instanceof ObjectNode given ? given : null;
    if (body == null) {
      return;
    }
    String name = girth.substring(girth.lastIndexOf('/') + 1);
    for (String one :
        name.equals("bust") ? List.of(name, "bustLeft", "bustRight") : List.of(name)) {
      for (String way : ways) {
        String said = form.value(held(girth, way));
        String length = body.path(one).textValue();
        if (!said.isEmpty() && length != null) {
          body.putObject(one).put("value", length);
        }
        if (!said.isEmpty() && body.path(one) instanceof ObjectNode measuring) {
          measuring.put(way, said);
        }
      }
    }
  }

  private static void putRows(
      FilledForm form, ObjectNode request, String list, List<Field> fields) {
    boolean inches = form.value("units").equals("imperial");
    for (int row = 0; row < ROWS; row++) {
      ObjectNode item = JsonNodeFactory.instance.objectNode();
      for (Field field : fields) {
        String value = form.value(cell(list, row, field));
        JsonPointer at = JsonPointer.compile("/" + field.pointer());
        if (!value.isEmpty()) {
          ObjectNode owner = at.head().matches() ? item : item.withObject(at.head());
          if (SEVERAL.contains(field.pointer())) {
            owner.putArray(field.pointer()).add(value);
          } else {
            owner.put(at.last().getMatchingProperty(), field.written(value, inches));
          }
        }
      }
      if (!item.isEmpty()) {
        request.withArray(list).add(item);
      }
    }
  }

  /** The fields for what was told earlier, with empty rows for more. */
  static Map<String, List<String>> fields(JsonNode soFar) {
    Map<String, List<String>> fields = new LinkedHashMap<>();
    fields.put(SHOWN, List.of(FilledForm.YES));
    for (Field field : PLAIN) {
      String value = shown(soFar.at(field.pointer()));
      fields.put(field.pointer(), value == null ? List.of() : List.of(value));
    }
    HELD.forEach(
        (girth, ways) ->
            ways.forEach(
                way -> {
                  String said = soFar.at(girth + "/" + way).textValue();
                  fields.put(held(girth, way), said == null ? List.of() : List.of(said));
                }));
    fields.put(FINE, texts(soFar.at(FINE)));
    rowNames().forEach(name -> fields.put(name, List.of()));
    return fields;
  }

  private static List<String> texts(JsonNode list) {
    return list.valueStream().map(JsonNode::asText).toList();
  }

  /** The value as its field shows it; null where a field can't show it. */
  private static String shown(JsonNode value) {
    return value.isTextual() || value.isInt() ? value.asText() : value.path("value").textValue();
  }
}
