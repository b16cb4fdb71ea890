package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import easewright.http.Examples;
import java.io.IOException;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Every input is either parsed or rejected with faults; pointers follow RFC 6901 section 5. */
class FittingReaderPropertiesTest {
  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
  private final FittingReader reader = Names.reader();

  @Property(tries = 500)
  void random_json_is_read_or_refused(@ForAll("json") JsonNode json) {
    ReadOrRefused.check(() -> reader.read(json));
  }

  @Property(tries = 1000)
  void an_example_with_one_value_replaced_is_parsed_or_rejected(
      @ForAll("examples") JsonNode example, @ForAll("json") JsonNode other, @ForAll int where) {
    JsonNode changed = ReadOrRefused.replaced(example, other, where);
    ReadOrRefused.check(() -> reader.read(changed));
  }

  @Provide
  Arbitrary<JsonNode> examples() throws IOException {
    return Arbitraries.of(Examples.requests("/v1/fittings"));
  }

  @Provide
  Arbitrary<JsonNode> json() {
    return json(3);
  }

  private static Arbitrary<JsonNode> json(int depth) {
    Arbitrary<JsonNode> leaf =
        Arbitraries.oneOf(
            Arbitraries.strings().ofMaxLength(12).map(JSON::textNode),
            Arbitraries.of("94 cm", "34 1/4 in", "-3 mm", "0 cm", "1e9 m", "75 %", "6 N", "left")
                .map(JSON::textNode),
            Arbitraries.doubles().map(JSON::numberNode),
            Arbitraries.bigIntegers().map(n -> (JsonNode) JSON.numberNode(n)),
            Arbitraries.of(true, false).map(JSON::booleanNode),
            Arbitraries.just((JsonNode) JSON.nullNode()));
    if (depth == 0) {
      return leaf;
    }
    Arbitrary<String> names =
        Arbitraries.oneOf(
            Arbitraries.of(
                "body",
                "bust",
                "underbust",
                "value",
                "how",
                "signs",
                "sign",
                "amount",
                "cloth",
                "main",
                "around",
                "marked",
                "stretched",
                "elastic",
                "load",
                "pattern",
                "sheet",
                "inline",
                "choices",
                "making",
                "seams",
                "circumstances",
                "whyNot",
                "a~/b"),
            Arbitraries.strings().ofMaxLength(5));
    return Arbitraries.oneOf(
        leaf,
        json(depth - 1).list().ofMaxSize(4).map(items -> JSON.arrayNode().addAll(items)),
        Arbitraries.maps(names, json(depth - 1))
            .ofMaxSize(5)
            .map(FittingReaderPropertiesTest::object));
  }

  private static JsonNode object(Map<String, JsonNode> fields) {
    return JSON.objectNode().setAll(fields);
  }
}
