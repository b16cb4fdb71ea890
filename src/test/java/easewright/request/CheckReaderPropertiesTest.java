package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import easewright.http.Examples;
import java.io.IOException;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Every input is either parsed or rejected with faults; pointers follow RFC 6901 section 5. */
class CheckReaderPropertiesTest {
  private final CheckReader reader = new CheckReader(Names.KNOWN);

  @Property(tries = 1000)
  void an_example_with_one_value_replaced_is_parsed_or_rejected(
      @ForAll("examples") JsonNode example, @ForAll("values") JsonNode other, @ForAll int where) {
    JsonNode changed = ReadOrRefused.replaced(example, other, where);
    ReadOrRefused.check(() -> reader.size(changed));
    ReadOrRefused.check(() -> reader.cloth(changed));
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
