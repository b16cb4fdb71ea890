package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.measure.BadQuantity;
import easewright.measure.Dimension;
import easewright.measure.Quantity;
import easewright.measure.UnitSystem;
import java.util.Map;
import java.util.Optional;

/**
 * Infers the client's units from the first length; ignores the pattern's lengths, which its maker
 * wrote.
 */
final class FirstLength {
  private FirstLength() {}

  static Optional<UnitSystem> system(JsonNode node) {
    if (node.isTextual()) {
      return ofText(node.textValue());
    }
    for (Map.Entry<String, JsonNode> field : node.properties()) {
      if (!field.getKey().equals("pattern")) {
        Optional<UnitSystem> found = system(field.getValue());
        if (found.isPresent()) {
          return found;
        }
      }
    }
    for (JsonNode item : node.isArray() ? node : node.path("")) {
      Optional<UnitSystem> found = system(item);
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private static Optional<UnitSystem> ofText(String text) {
    try {
      Quantity quantity = Quantity.parse(text);
      return quantity.dimension() == Dimension.LENGTH
          ? Optional.of(quantity.system())
          : Optional.empty();
    } catch (BadQuantity notOne) {
      return Optional.empty();
    }
  }
}
