package easewright.pattern;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.cloth.ImpossibleCloth;
import easewright.measure.BadQuantity;
import easewright.wording.Blanks;
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
    } catch (BadQuantity bad) {
      faults.add(
          new SheetFault(pointer, bad.problem(), SheetWords.remedy("quantity", Blanks.NONE)));
      return 1;
    }
  }

  double mm(String key) {
    return at(key).quantity(SheetQuantities::mm);
  }

  Optional<Double> maybe(String key, Function<String, Double> reader) {
    return has(key) ? Optional.of(at(key).quantity(reader)) : Optional.empty();
  }

  /**
   * The record made from the values here; reports a fault if it rejects them.
   *
   * @param key of the remedy
   */
  <T> Optional<T> made(Supplier<T> maker, String key) {
    try {
      return Optional.of(maker.get());
    } catch (SheetRefusal refused) {
      refuse(refused.key(), key);
    } catch (ImpossibleCloth refused) {
      refuse("cloth-" + refused.key(), key);
    }
    return Optional.empty();
  }

  private void refuse(String problem, String remedy) {
    faults.add(
        new SheetFault(
            pointer,
            SheetWords.problem(problem, Blanks.NONE),
            SheetWords.remedy(remedy, Blanks.NONE)));
  }

  /**
   * Adds a fault.
   *
   * @param key of its sentences
   * @param pairs name and value of each blank in them, in turn
   */
  void fault(String key, Object... pairs) {
    Blanks blanks = Blanks.ofPairs(pairs);
    faults.add(
        new SheetFault(pointer, SheetWords.problem(key, blanks), SheetWords.remedy(key, blanks)));
  }
}
