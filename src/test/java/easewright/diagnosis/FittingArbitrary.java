package easewright.diagnosis;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.pattern.Choice;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Statements.Shows;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.RandomDistribution;

/**
 * Random legal fittings, as requests. Bodies follow the US Army's 1988 survey of 2208 women (Gordon
 * et al. 1989, NATICK/TR-89/044): mean and SD of the underbust, the other measurements by
 * regressions computed from its data, each with its residual SD.
 */
final class FittingArbitrary {
  static final List<String> CIRCUMSTANCES =
      List.of(
          "nursing",
          "pregnant",
          "operatedRecently",
          "implantOrExpander",
          "growing",
          "sleepingInIt",
          "wearingItAllDay",
          "latexSensitive",
          "strapsSlackenedAlready");

  /** A shipped sheet as it is written. */
  static final ObjectNode QUILLMERE = written();

  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
  private static final Catalog CATALOG = Answering.BOOK.catalog();
  private static final PatternSheet SHEET = Answering.SHEETS.shipped().get(0);
  private static final List<SignEntry> SIGNS = List.copyOf(CATALOG.signs().values());
  private static final List<String> ADJUSTMENTS = List.copyOf(CATALOG.adjustments().keySet());
  private static final List<String> CAUSES = List.copyOf(CATALOG.causes().keySet());

  private FittingArbitrary() {}

  static Arbitrary<ObjectNode> any() {
    return with(signs(14));
  }

  /** With at least one of these signs present. */
  static Arbitrary<ObjectNode> showing(Set<String> ids) {
    Arbitrary<List<List<ObjectNode>>> reported =
        Combinators.combine(
                sign(Arbitraries.of(ids).map(CATALOG.signs()::get)), signs(10), signs(10))
            .as(
                (flag, before, after) -> {
                  ObjectNode first = flag.get(0);
                  if (first.path("seen").asText().equals("absent")) {
                    first = JSON.objectNode().put("sign", first.get("sign").asText());
                  }
                  List<List<ObjectNode>> all = new ArrayList<>(before);
                  all.add(List.of(first));
                  all.addAll(after);
                  return firstOfEach(all, first.get("sign").asText());
                });
    return with(reported);
  }

  private static List<List<ObjectNode>> firstOfEach(List<List<ObjectNode>> all, String wanted) {
    List<List<ObjectNode>> kept = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (List<ObjectNode> one : all) {
      String id = one.get(0).get("sign").asText();
      boolean denied = one.get(0).path("seen").asText().equals("absent");
      if (!(id.equals(wanted) && (denied || one.size() > 1)) && seen.add(id)) {
        kept.add(one);
      }
    }
    return kept;
  }

  private static Arbitrary<ObjectNode> with(Arbitrary<List<List<ObjectNode>>> signs) {
    return Combinators.combine(
            measures(), pattern(), cloths(), elastic(), making(), signs, earlier(), rest())
        .as(FittingArbitrary::fitting)
        .filter(json -> json.has("signs") || json.at("/body/underbust").isTextual())
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

  private static ObjectNode written() {
    try {
      return (ObjectNode)
          new YAMLMapper()
              .readTree(
                  Path.of("src/main/resources/easewright/patterns/quillmere-top.yaml").toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void list(ObjectNode json, String field, List<ObjectNode> items) {
    if (!items.isEmpty()) {
      ArrayNode array = json.putArray(field);
      items.forEach(item -> array.add(item.deepCopy()));
    }
  }

  private record Measures(
      double underbust,
      double bust,
      double upperChest,
      double width,
      double shoulder,
      double below,
      List<Double> ratios,
      int given) {

    void write(ObjectNode json) {
      ObjectNode body = JSON.objectNode();
      if (has(0)) {
        body.put("underbust", mm(underbust));
        if (has(1)) {
          body.put("bust", mm(Math.max(bust, underbust + 40)));
        }
      }
      putIf(2, body, "upperChest", upperChest);
      putIf(3, body, "bustPointWidth", width);
      putIf(4, body, "shoulderToBustPoint", shoulder);
      putIf(5, body, "shoulderToUnderbust", shoulder + below);
      ObjectNode garment = JSON.objectNode();
      putIf(6, garment, "underband", underbust * ratios.get(0));
      putIf(7, garment, "bust", bust * ratios.get(1));
      if (!body.isEmpty()) {
        json.set("body", body);
      }
      if (!garment.isEmpty()) {
        json.set("garment", garment);
      }
    }

    private void putIf(int bit, ObjectNode into, String name, double value) {
      if (has(bit)) {
        into.put(name, mm(value));
      }
    }

    private boolean has(int bit) {
      return (given >> bit & 1) == 1;
    }
  }

  private static Arbitrary<Measures> measures() {
    return Combinators.combine(
            z(),
            z(),
            z(),
            z(),
            z(),
            between(70, 160),
            between(0.75, 1.05).list().ofSize(3),
            mask(8))
        .as(
            (z0, z1, z2, z3, z4, below, ratios, given) -> {
              double under = 769.7 + 51.0 * z0;
              double bust = 68.2 + 1.090 * under + 30.8 * z1;
              double upper = 153.4 + 0.366 * under + 0.498 * bust + 21.2 * z2;
              double width = 61.3 + 0.136 * bust + 13.7 * z3;
              // The survey measured from the neck; the tape here starts at the shoulder beside it.
              double shoulder = 65.4 + 0.223 * bust + 17.2 * z4;
              return new Measures(under, bust, upper, width, shoulder, below, ratios, given);
            });
  }

  /** A pattern: none, shipped or sent along; a size near the body or any; options. */
  private record PatternPick(int kind, int size, boolean near, int options, int support) {
    void write(ObjectNode json, double underbust) {
      ObjectNode choices = JSON.objectNode();
      if (kind < 3) {
        SHEET
            .choices()
            .forEach(c -> pick(choices, c, (options >> 3 * SHEET.choices().indexOf(c)) & 7));
      } else {
        legal(choices);
        List<PatternSize> sizes =
            SHEET.sizes().stream()
                .filter(z -> !near || Math.abs(z.underbustMm().middleMm() - underbust) < 60)
                .toList();
        if (!sizes.isEmpty() && size < 900) {
          json.put("sizeCut", sizes.get(size % sizes.size()).name());
        }
        ObjectNode pattern = json.putObject("pattern");
        if (kind < 9) {
          pattern.put("sheet", SHEET.id());
        } else {
          pattern.set("inline", varied());
        }
      }
      if (!choices.isEmpty()) {
        json.set("choices", choices);
      }
    }

    private void legal(ObjectNode choices) {
      SHEET
          .choices()
          .forEach(c -> pick(choices, c, (options >> 3 * SHEET.choices().indexOf(c)) & 7));
      if (choices.path("closure").asText().equals("hooks")) {
        choices.remove("back");
      }
    }

    private static void pick(ObjectNode choices, Choice choice, int pick) {
      if (pick < choice.options().size()) {
        choices.put(choice.id(), choice.options().get(pick).id());
      }
    }

    private ObjectNode varied() {
      ObjectNode sheet = QUILLMERE.deepCopy();
      sheet.put("id", "sent-along");
      sheet.put("supportClass", List.of("low", "medium", "high").get(support));
      return sheet;
    }
  }

  private static Arbitrary<PatternPick> pattern() {
    return Combinators.combine(
            uniform(10), uniform(1000), Arbitraries.of(true, true, false), mask(18), uniform(3))
        .as(PatternPick::new);
  }

  private static Arbitrary<ObjectNode> cloths() {
    return Combinators.combine(cloth(), cloth(), cloth(), mask(6))
        .as(
            (main, lining, support, given) -> {
              ObjectNode cloths = JSON.objectNode();
              if ((given & 1) == 1) {
                cloths.set("main", main);
              }
              if ((given & 6) == 6) {
                cloths.set("lining", lining);
              }
              if ((given & 24) == 24) {
                cloths.set("support", support);
              }
              return cloths;
            });
  }

  private static Arbitrary<ObjectNode> cloth() {
    return Combinators.combine(between(0, 120), between(0, 0.35), between(0, 90), mask(3))
        .as(
            (around, kept, along, given) -> {
              ObjectNode cloth = JSON.objectNode();
              ObjectNode pulled = cloth.putObject("around");
              pulled.put("marked", "100 mm").put("stretched", mm(100 + around));
              if ((given & 1) == 1) {
                pulled.put("relaxed", mm(100 + Math.floor(around * kept)));
              }
              if ((given & 2) == 2) {
                cloth.putObject("along").put("marked", "100 mm").put("stretched", mm(100 + along));
              }
              if ((given & 4) == 4) {
                cloth.put("weight", "230 g/m2");
              }
              return cloth;
            });
  }

  private static Arbitrary<ObjectNode> elastic() {
    return Combinators.combine(between(8, 50), between(5, 120), between(1, 15), mask(2))
        .as(
            (width, pulled, load, given) -> {
              ObjectNode elastic = JSON.objectNode();
              if ((given & 1) == 1) {
                elastic
                    .put("width", mm(width))
                    .put("relaxed", "200 mm")
                    .put("stretched", mm(200 + pulled))
                    .put("load", String.format(Locale.ROOT, "%.1f N", load));
              }
              if (given == 3) {
                elastic.put("full", mm(330 + pulled));
              }
              return elastic;
            });
  }

  private static Arbitrary<ObjectNode> making() {
    return Combinators.combine(between(4, 20), between(6, 15), mask(3))
        .as(
            (sewn, planned, given) -> {
              ObjectNode making = JSON.objectNode();
              if ((given & 1) == 1) {
                making.put("seamAllowanceSewn", mm(sewn));
                making.put("seams", 4 + given);
              }
              if ((given & 3) == 3) {
                making.put("seamAllowancePlanned", mm(planned));
              }
              return making;
            });
  }

  /** Signs of every kind, half of them such as one cause shows. */
  private static Arbitrary<List<List<ObjectNode>>> signs(int most) {
    return Arbitraries.of(CAUSES)
        .flatMap(
            cause -> {
              List<SignEntry> shown =
                  Answering.BOOK.always().shows().stream()
                      .filter(s -> s.cause().equals(cause))
                      .map(Shows::sign)
                      .distinct()
                      .filter(CATALOG.signs()::containsKey)
                      .map(CATALOG.signs()::get)
                      .toList();
              return sign(Arbitraries.oneOf(Arbitraries.of(SIGNS), Arbitraries.of(shown)))
                  .list()
                  .uniqueElements(one -> one.get(0).get("sign").asText())
                  .ofMaxSize(most);
            });
  }

  /** One sign, or the same sign reported of the left and the right. */
  private static Arbitrary<List<ObjectNode>> sign(Arbitrary<SignEntry> entries) {
    return Combinators.combine(
            entries, uniform(100), uniform(4), uniform(8), uniform(5), between(0, 60))
        .as(
            (entry, seen, place, side, degree, amount) -> {
              ObjectNode sign = JSON.objectNode().put("sign", entry.id());
              if (entry.where() != null && place < entry.where().size()) {
                sign.put("place", entry.where().get(place));
              }
              if (seen >= 65) {
                sign.put("seen", "absent");
              } else {
                if (degree < 3) {
                  sign.put("degree", List.of("slight", "clear", "strong").get(degree));
                }
                if (entry.amount() != null && seen < 30) {
                  sign.put("amount", mm(amount));
                }
              }
              if (entry.sided() && side < 3) {
                sign.put("side", List.of("left", "right", "both").get(side));
              } else if (entry.sided() && side == 3) {
                sign.put("side", "left");
                ObjectNode right = sign.deepCopy().put("side", "right");
                return List.of(sign, seen % 2 == 0 ? right : denied(right));
              }
              return List.of(sign);
            });
  }

  private static ObjectNode denied(ObjectNode sign) {
    sign.remove(List.of("degree", "amount"));
    return sign.put("seen", "absent");
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
              if (by < 4) {
                rest.put(
                    "measuredBy",
                    List.of("tape-self", "tape-trained", "scan", "expert-tape").get(by));
              }
              return rest;
            });
  }

  private static Arbitrary<Double> z() {
    return Arbitraries.doubles()
        .between(-3, 3)
        .ofScale(3)
        .withDistribution(RandomDistribution.gaussian(3));
  }

  private static Arbitrary<Double> between(double least, double most) {
    return Arbitraries.doubles()
        .between(least, most)
        .ofScale(2)
        .withDistribution(RandomDistribution.uniform());
  }

  private static Arbitrary<Integer> uniform(int below) {
    return Arbitraries.integers()
        .between(0, below - 1)
        .withDistribution(RandomDistribution.uniform());
  }

  private static Arbitrary<Integer> mask(int bits) {
    return uniform(1 << bits);
  }

  private static String mm(double value) {
    return Math.round(value) + " mm";
  }
}
