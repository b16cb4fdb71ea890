package easewright.pattern;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/**
 * What no sheet holds, and what the check of its shape would stumble over: texts far longer than
 * any, which its patterns would be tried on, and numbers that are none. The YAML parser knows no
 * bound for either.
 */
final class SheetBounds {
  static final int LONGEST_TEXT = 4000;
  static final int LONGEST_NAME = 200;

  private final List<SheetFault> faults = new ArrayList<>();

  private SheetBounds() {}

  /** Every place that exceeds a bound. */
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
