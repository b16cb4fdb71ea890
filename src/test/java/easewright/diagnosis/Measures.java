package easewright.diagnosis;

import static easewright.diagnosis.Draws.between;
import static easewright.diagnosis.Draws.mask;
import static easewright.diagnosis.Draws.mm;
import static easewright.diagnosis.Draws.z;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/**
 * A body and a toile sewn for it, millimetres. Bodies follow the US Army's 1988 survey of 2208
 * women (Gordon et al. 1989, NATICK/TR-89/044): mean and SD of the underbust, the other
 * measurements by regressions computed from its data, each with its residual SD.
 */
record Measures(
    double underbust,
    double bust,
    double upperChest,
    double width,
    double shoulder,
    double below,
    List<Double> ratios,
    int given) {
  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

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

  static Arbitrary<Measures> any() {
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
}
