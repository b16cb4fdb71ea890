package easewright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Details of a sign in a form: where, on which side, how much. The fields are named after the sign,
 * such as "straps-dig-in/side".
 */
final class SignDetails {
  private static final Field AMOUNT = Field.length("amount");
  private static final List<Field> FIELDS =
      List.of(
          Field.text("place"),
          Field.text("side"),
          Field.text("degree"),
          AMOUNT,
          Field.text("when"));

  private SignDetails() {}

  private static String name(String sign, Field field) {
    return sign + "/" + field.pointer();
  }

  /**
   * Adds the form's details to the report of a sign; an empty field that was sent withdraws an
   * earlier detail.
   */
  static void put(FilledForm form, String sign, ObjectNode report) {
    boolean inches = form.value("units").equals("imperial");
    for (Field field : FIELDS) {
      String name = name(sign, field);
      String value = form.value(name);
      if (!value.isEmpty()) {
        report.put(field.pointer(), field.written(value, inches));
      } else if (form.has(name) && shown(report.path(field.pointer())) != null) {
        report.remove(field.pointer());
      }
    }
  }

  /** The fields for signs reported before; a sign reported in two places stays as reported. */
  static Map<String, List<String>> fields(JsonNode signs) {
    Map<String, List<JsonNode>> reports = new LinkedHashMap<>();
    for (JsonNode one : signs) {
      reports.computeIfAbsent(one.path("sign").asText(), any -> new ArrayList<>()).add(one);
    }
    Map<String, List<String>> fields = new LinkedHashMap<>();
    reports.forEach(
        (sign, parts) -> {
          for (Field field : FIELDS) {
            String value = parts.size() > 1 ? null : shown(parts.get(0).path(field.pointer()));
            fields.put(name(sign, field), value == null ? List.of() : List.of(value));
          }
        });
    return fields;
  }

  /** The value as its field shows it; null where a field can't, such as a range, which stays. */
  private static String shown(JsonNode value) {
    return value.size() == 1 && value.isArray() ? value.path(0).textValue() : value.textValue();
  }
}
