package easewright.book;

import static java.util.stream.Collectors.groupingBy;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.inference.Network;
import easewright.diagnosis.inference.NetworkBuilder;
import easewright.rulebook.Catalog;
import easewright.rulebook.Conclusions.Shows;
import easewright.rulebook.RuleBookSource;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/**
 * Someone in a toile with known faults. What shows is drawn from what the rule book says in any
 * fitting; what is reported is what shows, misreported as often as the book's trust allows.
 */
final class SimulatedWearer {
  private static final RuleBookSource SOURCE = Consulting.BOOK.source();

  /** The book in any fitting. */
  static final Network WORLD = world();

  /** How often a degree is meant when a sign is reported; our own choice. */
  private static final Map<String, Double> DEGREES =
      new TreeMap<>(Map.of("slight", 0.3, "clear", 0.5, "strong", 0.2));

  private static final int MOST_CAUSES = 2;

  private final Random random;
  private final List<String> atWork;
  private final Map<String, Boolean> shown = new HashMap<>();

  /** Draws the causes by their priors, at most two, as the service supposes. */
  SimulatedWearer(Random random) {
    this.random = random;
    List<String> drawn;
    do {
      drawn =
          SOURCE.catalog().causes().values().stream()
              .filter(cause -> chance(parameter(cause.prior())))
              .map(Catalog.CauseEntry::id)
              .toList();
    } while (drawn.size() > MOST_CAUSES);
    this.atWork = drawn;
  }

  static List<String> signs() {
    return SOURCE.catalog().signs().values().stream()
        .filter(sign -> !sign.redFlag())
        .map(Catalog.SignEntry::id)
        .toList();
  }

  List<String> atWork() {
    return atWork;
  }

  /** Whether a sign or finding is there: drawn once, then always the same. */
  boolean shows(String sign) {
    return shown.computeIfAbsent(sign, s -> chance(WORLD.probability(s, atWork)));
  }

  boolean chance(double probability) {
    return random.nextDouble() < probability;
  }

  /** Looks for a sign and reports it, or denies it, sometimes wrongly. */
  void lookFor(String sign, ObjectNode fitting) {
    String degree = degree();
    double wrongly =
        shows(sign)
            ? 1 - SOURCE.parameter("trust-denied")
            : 1 - SOURCE.parameter("trust-" + degree);
    boolean reported = shows(sign) != chance(wrongly);
    Consulting.report(fitting, sign, reported, degree);
  }

  /** Tells of a sign that shows, unasked. */
  void mention(String sign, ObjectNode fitting) {
    Consulting.report(fitting, sign, true, degree());
  }

  private String degree() {
    double left = random.nextDouble();
    for (Map.Entry<String, Double> degree : DEGREES.entrySet()) {
      left -= degree.getValue();
      if (left < 0) {
        return degree.getKey();
      }
    }
    return "strong";
  }

  private static Network world() {
    NetworkBuilder builder = Network.builder();
    Catalog catalog = SOURCE.catalog();
    builder.nothingWrong(parameter("nothing-wrong"));
    catalog.causes().values().forEach(c -> builder.cause(c.id(), parameter(c.prior())));
    catalog.signs().values().forEach(s -> builder.sign(s.id(), leak(s.withoutFault())));
    catalog.findings().values().forEach(f -> builder.sign(f.id(), leak(f.withoutFault())));
    Consulting.BOOK.always().shows().stream()
        .collect(groupingBy(shows -> List.of(shows.cause(), shows.sign())))
        .forEach((link, said) -> builder.link(link.get(0), link.get(1), middle(said)));
    return builder.build();
  }

  private static double middle(List<Shows> said) {
    return said.stream().mapToDouble(one -> parameter(one.howOften())).average().orElseThrow();
  }

  private static double parameter(String words) {
    return SOURCE.parameter(words.replace(' ', '-'));
  }

  private static double leak(String words) {
    return parameter("without-fault-" + words);
  }
}
