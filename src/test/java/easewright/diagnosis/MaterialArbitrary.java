package easewright.diagnosis;

import static easewright.diagnosis.Draws.between;
import static easewright.diagnosis.Draws.mask;
import static easewright.diagnosis.Draws.mm;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Random cloths, elastics and seams, as tests by hand would read them. */
final class MaterialArbitrary {
  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

  private MaterialArbitrary() {}

  static Arbitrary<ObjectNode> cloths() {
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

  static Arbitrary<ObjectNode> elastic() {
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

  static Arbitrary<ObjectNode> making() {
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
}
