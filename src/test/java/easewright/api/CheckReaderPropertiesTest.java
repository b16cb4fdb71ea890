package easewright.api;

import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Whatever is asked is either read or refused with faults; RFC 6901 section 5 for the pointers. */
class CheckReaderPropertiesTest {
  private final CheckReader reader = new CheckReader(Names.KNOWN, Names.reader());

  @Property(tries = 1000)
  void an_example_with_one_value_replaced_is_read_or_refused(
      @ForAll("examples") JsonNode example, @ForAll("values") JsonNode other, @ForAll int where) {
    JsonNode changed = example.deepCopy();
    List<ObjectNode> objects = new ArrayList<>();
    collect(changed, objects);
    ObjectNode target = objects.get(Math.floorMod(where, objects.size()));
    List<String> names = new ArrayList<>();
    target.fieldNames().forEachRemaining(names::add);
    target.set(names.get(Math.floorMod(where / 7, names.size())), other);
    readOrRefuse(() -> reader.size(changed));
    readOrRefuse(() -> reader.cloth(changed));
  }

  private static void readOrRefuse(Runnable reading) {
    try {
      reading.run();
    } catch (FaultyRequest refusal) {
      assertFalse(refusal.faults().isEmpty());
      for (Fault fault : refusal.faults()) {
        JsonPointer.compile(fault.pointer());
        assertFalse(fault.problem().isBlank());
        assertFalse(fault.remedy().isBlank());
      }
    }
  }

  private static void collect(JsonNode node, List<ObjectNode> into) {
    if (node instanceof ObjectNode object && !object.isEmpty()) {
      into.add(object);
    }
    node.forEach(child -> collect(child, into));
  }

  @Provide
  Arbitrary<JsonNode> examples() throws IOException {
    return Arbitraries.of(Examples.requests("/v1/size-checks", "/v1/cloth-checks"));
  }

  @Provide
  Arbitrary<JsonNode> values() {
    JsonNodeFactory json = JsonNodeFactory.instance;
    return Arbitraries.oneOf(
        Arbitraries.strings().ofMaxLength(12).map(json::textNode),
        Arbitraries.of("94 cm", "0 cm", "75 %", "6 N", "uk", "en", "999 ZZ", "0", "C75", "34 IJ")
            .map(json::textNode),
        Arbitraries.doubles().map(json::numberNode),
        Arbitraries.of(
            json.arrayNode(), json.objectNode(), json.nullNode(), json.booleanNode(true)));
  }
}
