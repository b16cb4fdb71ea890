package easewright.book;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Random;

/**
 * Bodies drawn from the published statistics of the 1988 survey of 2208 women of the US Army
 * (Gordon et al. 1989, NATICK/TR-89/044): the mean and spread of the underbust, and each other
 * measurement by its regression with the spread that remains (computed from the survey). The women
 * were 18 to 50 years old and fit; none was pregnant or nursing.
 */
final class SurveyBodies {
  private final Random random;

  SurveyBodies(Random random) {
    this.random = random;
  }

  /** Measurements in mm, in the wire form of a fitting's body. */
  ObjectNode draw() {
    double under = 769.7 + 51.0 * random.nextGaussian();
    double bust = 68.2 + 1.090 * under + 30.8 * random.nextGaussian();
    double upper = 153.4 + 0.366 * under + 0.498 * bust + 21.2 * random.nextGaussian();
    double width = 61.3 + 0.136 * bust + 13.7 * random.nextGaussian();
    // The least difference of bust and underbust among the 2208 was 47 mm.
    if (bust - under < 47) {
      return draw();
    }
    return JsonNodeFactory.instance
        .objectNode()
        .put("bust", mm(bust))
        .put("underbust", mm(under))
        .put("upperChest", mm(upper))
        .put("bustPointWidth", mm(width));
  }

  static String mm(double value) {
    return String.format(Locale.ROOT, "%.0f mm", value);
  }
}
