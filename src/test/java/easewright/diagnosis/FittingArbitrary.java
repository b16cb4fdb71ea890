package easewright.diagnosis;

import static easewright.diagnosis.Draws.between;
import static easewright.diagnosis.Draws.mm;
import static easewright.diagnosis.Draws.uniform;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.rulebook.Catalog;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Random legal fittings, as requests: a body, a toile, what it was sewn of, what was seen. */
final class FittingArbitrary {
  static final List<String> CIRCUMSTANCES =
      List.of(
          "nursing",
          "pregnant",
          "operatedRecently",
          "implantOrExpander",
          "lymphoedemaOrNodesRemoved",
          "radiotherapy",
          "chemotherapy",
          "portOrPacemaker",
          "shingles",
          "hurtRibs",
          "prosthesisOrPocket",
          "growing",
          "sleepingInIt",
          "wearingItAllDay",
          "latexSensitive",
          "strapsSlackenedAlready");

  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
  private static final Catalog CATALOG = Answering.BOOK.catalog();
  private static final List<String> ADJUSTMENTS = List.copyOf(CATALOG.adjustments().keySet());

  private FittingArbitrary() {}

  /** Fittings whose answer speaks of causes: beside a danger it does not. */
  static Arbitrary<ObjectNode> withoutDanger() {
    return any().filter(given -> !Answering.answer(given).isDanger());
  }

  static Arbitrary<ObjectNode> any() {
    return with(SignArbitrary.any(14));
  }

  /** With at least one of these signs present. */
  static Arbitrary<ObjectNode> showing(Set<String> ids) {
    return with(SignArbitrary.showing(ids));
  }

  private static Arbitrary<ObjectNode> with(Arbitrary<List<List<ObjectNode>>> signs) {
    return Combinators.combine(
            Measures.any(),
            PatternPick.any(),
            MaterialArbitrary.cloths(),
            MaterialArbitrary.elastic(),
            MaterialArbitrary.making(),
            signs,
            earlier(),
            rest())
        .as(FittingArbitrary::fitting)
        // An underbust alone says too little to be answered.
        .filter(json -> json.has("signs") || json.path("body").has("bust"))
        .withoutEdgeCases();
  }

  private static ObjectNode fitting(
      Measures measures,
      PatternPick pattern,
      ObjectNode cloths,
      ObjectNode elastic,
      ObjectNode making,
      List<List<ObjectNode>> signs,
      List<ObjectNode> earlier,
      ObjectNode rest) {
    ObjectNode json = JSON.objectNode();
    json.setAll(rest);
    measures.write(json);
    pattern.write(json, measures.underbust());
    if (!cloths.isEmpty()) {
      json.set("cloth", cloths);
    }
    if (!elastic.isEmpty()) {
      elastic.put("cut", mm(measures.underbust() * measures.ratios().get(2)));
      json.set("elastic", elastic);
    }
    if (!making.isEmpty()) {
      json.set("making", making);
    }
    list(json, "signs", signs.stream().flatMap(List::stream).toList());
    list(json, "earlier", earlier);
    return json;
  }

  private static void list(ObjectNode json, String field, List<ObjectNode> items) {
    if (!items.isEmpty()) {
      ArrayNode array = json.putArray(field);
      items.forEach(item -> array.add(item.deepCopy()));
    }
  }

  private static Arbitrary<List<ObjectNode>> earlier() {
    return Combinators.combine(Arbitraries.of(ADJUSTMENTS), uniform(4), between(0, 40))
        .as(
            (adjustment, outcome, amount) -> {
              ObjectNode one = JSON.objectNode().put("adjustment", adjustment);
              if (outcome < 3) {
                one.put("outcome", List.of("better", "same", "worse").get(outcome));
                one.put("amount", mm(amount));
              }
              return one;
            })
        .list()
        .ofMaxSize(4);
  }

  private static Arbitrary<ObjectNode> rest() {
    return Combinators.combine(
            Arbitraries.of(CIRCUMSTANCES).set().ofMaxSize(3),
            uniform(6),
            uniform(40),
            uniform(3),
            uniform(5))
        .as(
            (circumstances, impact, months, units, by) -> {
              ObjectNode rest = JSON.objectNode();
              ObjectNode about = JSON.objectNode();
              circumstances.forEach(one -> about.put(one, true));
              if (impact < 3) {
                about.put("impact", List.of("low", "medium", "high").get(impact));
              }
              if (months < 18) {
                about.put("monthsSinceOperation", months);
              }
              if (!about.isEmpty()) {
                rest.set("circumstances", about);
              }
              if (units < 2) {
                rest.put("units", List.of("metric", "imperial").get(units));
              }
              if (by < 5) {
                rest.put(
                    "measuredBy",
                    List.of("tape-self", "tape-trained", "scan", "expert-tape", "tape-helped")
                        .get(by));
              }
              return rest;
            });
  }
}
