package easewright.book;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer.FindingNote;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;

/**
 * Numbers for a simulated wearer's fitting: a body of the survey, and at times a band, an allowance
 * and a cloth test, such that the findings about them are those the wearer shows.
 */
final class SimulatedNumbers {
  private static final int BODIES = 300;
  private static final double GIVEN = 0.5;

  private record Body(ObjectNode measured, Map<String, Boolean> findings) {}

  private final Random random;
  private final List<Body> bodies = new ArrayList<>();

  SimulatedNumbers(Random random) {
    this.random = random;
    SurveyBodies survey = new SurveyBodies(random);
    for (int i = 0; i < BODIES; i++) {
      ObjectNode measured = survey.draw();
      bodies.add(new Body(measured, findings(measured)));
    }
  }

  /** A fitting with numbers and no signs yet. */
  ObjectNode fitting(SimulatedWearer wearer) {
    ObjectNode fitting = JsonNodeFactory.instance.objectNode();
    ObjectNode body = body(wearer);
    fitting.set("body", body);
    fitting.put("measuredBy", "tape-trained");
    if (wearer.chance(GIVEN)) {
      double under = Double.parseDouble(body.path("underbust").asText().replace(" mm", ""));
      fitting.putObject("garment").put("underband", SurveyBodies.mm(under / (1 + strain(wearer))));
    }
    if (wearer.chance(GIVEN)) {
      fitting
          .putObject("making")
          .put("seamAllowancePlanned", "10 mm")
          .put("seamAllowanceSewn", sewn(wearer))
          .put("seams", 4);
    }
    if (wearer.chance(GIVEN)) {
      double stretched = wearer.shows("too-little-stretch-around-by-test") ? 120 : 155;
      double kept = wearer.shows("poor-recovery-by-test") ? 0.25 : 0.03;
      fitting
          .putObject("cloth")
          .putObject("main")
          .putObject("around")
          .put("marked", "100 mm")
          .put("stretched", SurveyBodies.mm(stretched))
          .put("relaxed", SurveyBodies.mm(100 + kept * (stretched - 100)));
    }
    return fitting;
  }

  private ObjectNode body(SimulatedWearer wearer) {
    List<Body> fitting =
        bodies.stream()
            .filter(
                body ->
                    body.findings().entrySet().stream()
                        .allMatch(f -> wearer.shows(f.getKey()) == f.getValue()))
            .toList();
    List<Body> from = fitting.isEmpty() ? bodies : fitting;
    return from.get(random.nextInt(from.size())).measured();
  }

  private double strain(SimulatedWearer wearer) {
    if (wearer.shows("band-slack-by-measure")) {
      return 0.03 * random.nextDouble();
    }
    return wearer.shows("band-too-tight-by-measure")
        ? 0.28 + 0.05 * random.nextDouble()
        : 0.09 + 0.02 * random.nextDouble();
  }

  private static String sewn(SimulatedWearer wearer) {
    if (wearer.shows("seams-sewn-wide-by-measure")) {
      return "13 mm";
    }
    return wearer.shows("seams-sewn-narrow-by-measure") ? "7 mm" : "10 mm";
  }

  private static Map<String, Boolean> findings(ObjectNode body) {
    ObjectNode fitting = JsonNodeFactory.instance.objectNode();
    fitting.set("body", body);
    fitting.put("measuredBy", "tape-trained");
    return Consulting.answer(fitting).findings().stream()
        .collect(Collectors.toMap(FindingNote::id, FindingNote::holds));
  }
}
