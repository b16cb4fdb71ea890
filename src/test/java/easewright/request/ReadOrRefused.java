package easewright.request;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;

/** Every input is either parsed or rejected with faults; pointers follow RFC 6901 section 5. */
final class ReadOrRefused {
  private ReadOrRefused() {}

  static void check(Runnable reading) {
    try {
      reading.run();
    } catch (FaultyRequest refusal) {
      assertFalse(refusal.faults().isEmpty());
      for (Fault fault : refusal.faults()) {
        JsonPointer.compile(fault.pointer());
        assertTrue(fault.problem().matches("(?s).*[.?]"), fault.problem());
        assertFalse(fault.remedy().isBlank());
      }
    }
  }

  /** A copy with one value at any position replaced by another. */
  static JsonNode replaced(JsonNode example, JsonNode other, int where) {
    JsonNode changed = example.deepCopy();
    List<ObjectNode> objects = new ArrayList<>();
    collect(changed, objects);
    ObjectNode target = objects.get(Math.floorMod(where, objects.size()));
    List<String> names = new ArrayList<>();
    target.fieldNames().forEachRemaining(names::add);
    target.set(names.get(Math.floorMod(where / 7, names.size())), other);
    return changed;
  }

  private static void collect(JsonNode node, List<ObjectNode> into) {
    if (node instanceof ObjectNode object && !object.isEmpty()) {
      into.add(object);
    }
    node.forEach(child -> collect(child, into));
  }
}
