package easewright.book;

import static java.util.stream.Collectors.groupingBy;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.inference.Network;
import easewright.inference.NetworkBuilder;
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

  /** How often a cause shows a sign at a degree; leak-share-slight supposes the same. */
  private static final Map<String, Double> DEGREES =
      new TreeMap<>(Map.of("slight", 0.3, "clear", 0.5, "strong", 0.2));

  /** The same where nothing wrong is behind the sign: seldom strong. */
  private static final Map<String, Double> HARMLESS_DEGREES = harmless();

  private static final int MOST_CAUSES = 2;

  private final Random random;
  private final List<String> atWork;
  private final Map<String, Boolean> shown = new HashMap<>();
  private final Map<String, Boolean> harmless = new HashMap<>();

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

  /** Whether no cause at work is behind a sign that shows: drawn once, then always the same. */
  private boolean isHarmless(String sign) {
    double leak = WORLD.probability(sign, List.of());
    double shows = WORLD.probability(sign, atWork);
    double noCause = (1 - shows) / (1 - leak);
    return harmless.computeIfAbsent(sign, s -> chance(leak * noCause / shows));
  }

  boolean chance(double probability) {
    return random.nextDouble() < probability;
  }

  /** Looks for a sign and reports it, or denies it, sometimes wrongly. */
  void lookFor(String sign, ObjectNode fitting) {
    String degree = degree(sign);
    double wrongly =
        shows(sign)
            ? 1 - SOURCE.parameter("trust-denied")
            : 1 - SOURCE.parameter("trust-" + degree);
    boolean reported = shows(sign) != chance(wrongly);
    Consulting.report(fitting, sign, reported, degree);
  }

  /** Tells of a sign that shows, unasked. */
  void mention(String sign, ObjectNode fitting) {
    Consulting.report(fitting, sign, true, degree(sign));
  }

  private String degree(String sign) {
    boolean harmlessly = shows(sign) && isHarmless(sign);
    double left = random.nextDouble();
    for (Map.Entry<String, Double> degree : (harmlessly ? HARMLESS_DEGREES : DEGREES).entrySet()) {
      left -= degree.getValue();
      if (left < 0) {
        return degree.getKey();
      }
    }
    return "strong";
  }

  private static Map<String, Double> harmless() {
    Map<String, Double> harmless = new TreeMap<>();
    DEGREES.forEach((d, often) -> harmless.put(d, often * SOURCE.parameter("leak-share-" + d)));
    return harmless;
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
