package easewright.pattern;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/** A node in a structurally valid sheet, and the list that collects its faults. */
record SheetNode(JsonNode json, String pointer, List<SheetFault> faults) {

  boolean has(String key) {
    return json.has(key);
  }

  SheetNode at(String key) {
    return new SheetNode(json.path(key), pointer + "/" + token(key), faults);
  }

  /** A key escaped for a pointer (RFC 6901, section 3). */
  static String token(String key) {
    return key.replace("~", "~0").replace("/", "~1");
  }

  List<SheetNode> each(String key) {
    SheetNode list = at(key);
    List<SheetNode> items = new ArrayList<>();
    for (int i = 0; i < list.json.size(); i++) {
      items.add(new SheetNode(list.json.get(i), list.pointer + "/" + i, faults));
    }
    return items;
  }

  Map<String, SheetNode> fields(String key) {
    SheetNode parent = at(key);
    Map<String, SheetNode> fields = new LinkedHashMap<>();
    parent.json.fieldNames().forEachRemaining(name -> fields.put(name, parent.at(name)));
    return fields;
  }

  String text(String key) {
    return json.path(key).asText();
  }

  Optional<String> maybeText(String key) {
    return has(key) ? Optional.of(text(key)) : Optional.empty();
  }

  List<String> texts(String key) {
    List<String> texts = new ArrayList<>();
    json.path(key).forEach(item -> texts.add(item.asText()));
    return texts;
  }

  /** This text as a quantity; reports a fault and returns a harmless 1 if it is invalid. */
  double quantity(Function<String, Double> reader) {
    try {
      return reader.apply(json.asText());
    } catch (IllegalArgumentException unreadable) {
      fault(
          unreadable.getMessage(),
          "Write a number and its unit as text, such as \"300 mm\", \"3/8 in\" or \"75 %\".");
      return 1;
    }
  }

  double mm(String key) {
    return at(key).quantity(SheetQuantities::mm);
  }

  Optional<Double> maybe(String key, Function<String, Double> reader) {
    return has(key) ? Optional.of(at(key).quantity(reader)) : Optional.empty();
  }

  /** A record built from this node; reports a fault if its constructor rejects the values. */
  <T> Optional<T> made(Supplier<T> maker, String remedy) {
    try {
      return Optional.of(maker.get());
    } catch (IllegalArgumentException refused) {
      fault(refused.getMessage(), remedy);
      return Optional.empty();
    }
  }

  void fault(String problem, String remedy) {
    faults.add(new SheetFault(pointer, problem, remedy));
  }
}
