package easewright.pattern;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/**
 * Limits that no real sheet exceeds, and that protect the schema validation: very long texts, which
 * its regular expressions would be applied to, and non-finite numbers. The YAML parser limits
 * neither.
 */
final class SheetBounds {
  static final int LONGEST_TEXT = 4000;
  static final int LONGEST_NAME = 200;

  private final List<SheetFault> faults = new ArrayList<>();

  private SheetBounds() {}

  /** Every location that exceeds a limit. */
  static List<SheetFault> faults(JsonNode sheet) {
    SheetBounds bounds = new SheetBounds();
    bounds.walk(sheet, "");
    return bounds.faults;
  }

  private void walk(JsonNode node, String pointer) {
    if (node.isTextual() && node.textValue().length() > LONGEST_TEXT) {
      faults.add(
          new SheetFault(
              pointer,
              "The text is too long.",
              "Keep texts under " + LONGEST_TEXT + " characters."));
    } else if (node.isNumber() && !Double.isFinite(node.doubleValue())) {
      faults.add(
          new SheetFault(pointer, "This is no number to count with.", "Write a whole number."));
    } else if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        walk(node.get(i), pointer + "/" + i);
      }
    } else {
      node.properties().forEach(field -> walk(field.getKey(), field.getValue(), pointer));
    }
  }

  private void walk(String name, JsonNode value, String pointer) {
    if (name.length() > LONGEST_NAME) {
      faults.add(
          new SheetFault(
              pointer,
              "A key here is too long.",
              "Keep keys under " + LONGEST_NAME + " characters."));
    } else {
      walk(value, pointer + "/" + SheetNode.token(name));
    }
  }
}
