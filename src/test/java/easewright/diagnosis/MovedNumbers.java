package easewright.diagnosis;

import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import easewright.inference.CauseProbability;
import easewright.inference.Link;
import easewright.inference.Network;
import easewright.inference.Observation;
import easewright.inference.Posterior;
import easewright.pattern.PatternSheets;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.CauseEntry;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Shows;
import easewright.rulebook.Parameter;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Weighs fittings again with one number of the book moved; their rules are heard once. */
final class MovedNumbers {
  /** Words for how often, each a degree above the one before it. */
  static final List<String> STRENGTHS =
      List.of("rarely", "sometimes", "often", "usually", "nearly-always");

  /** The same for how often a sign is seen with nothing wrong. */
  static final List<String> LEAKS =
      List.of("next-to-never", "hardly-ever", "rarely", "sometimes", "often");

  private static final String NONE = "none";

  private final RuleBook book;
  private final Knowledge plain;
  private final Sizing sizing;

  /** A fitting as its rules heard it. */
  record Heard(Conclusions said, List<EarlierAdjustment> tried, List<Observation> seen) {
    boolean saw(String sign) {
      return seen.stream().anyMatch(one -> one.sign().equals(sign));
    }
  }

  MovedNumbers(RuleBook book) {
    this.book = book;
    this.plain = knowledge(book.source());
    this.sizing = new Sizing(new PatternSheets().shipped(), book.source());
  }

  private Knowledge knowledge(RuleBookSource source) {
    return new Knowledge(source, book.always());
  }

  Heard heard(Fitting fitting) {
    Draft draft = Draft.of(fitting, book.source());
    FittingNumbers numbers =
        Figures.of(fitting, draft, sizing.estimate(fitting).orElse(null), book.source());
    List<EarlierAdjustment> tried = TriedChanges.of(fitting, book.source());
    try (RuleBook.Consultation consultation = book.open()) {
      Conclusions said =
          consultation.hear(Facts.of(fitting, draft, numbers.figures().values(), tried));
      List<Report> reports = Report.of(fitting, tried, said, plain);
      return new Heard(said, tried, reports.stream().map(Report::observation).toList());
    }
  }

  /** Id of the likeliest cause that is worth mentioning, or "none". */
  String first(Heard heard) {
    return first(plain.networkFor(heard.said(), heard.tried()), heard.seen());
  }

  private String first(Network network, List<Observation> seen) {
    return Posterior.infer(network, seen).causesFrom(plain.parameter("worth-mentioning")).stream()
        .findFirst()
        .map(CauseProbability::cause)
        .orElse(NONE);
  }

  /** The likeliest cause of each where the priors of some causes are taken times a factor. */
  List<String> withPriors(Map<String, Double> times, List<Heard> all) {
    Map<String, CauseEntry> causes = new HashMap<>(book.catalog().causes());
    Map<String, Double> priors = new HashMap<>();
    times.forEach(
        (cause, factor) -> {
          CauseEntry was = causes.get(cause);
          String word = "moved " + cause;
          priors.put(word.replace(' ', '-'), factor * plain.parameter(was.prior()));
          causes.put(cause, withPrior(was, word));
        });
    return firsts(knowledge(source(causes, priors)), all);
  }

  private static CauseEntry withPrior(CauseEntry was, String prior) {
    return new CauseEntry(
        was.id(),
        was.name(),
        was.says(),
        was.area(),
        was.stage(),
        prior,
        was.priorWhy(),
        was.priorSource(),
        was.lookAlikes(),
        was.indistinguishableFrom(),
        was.source());
  }

  /** The same where a word of the scales, such as "usually", means another number. */
  List<String> withWord(String parameter, double number, List<Heard> all) {
    return firsts(knowledge(source(book.catalog().causes(), Map.of(parameter, number))), all);
  }

  private List<String> firsts(Knowledge moved, List<Heard> all) {
    return all.parallelStream()
        .map(heard -> first(moved.networkFor(heard.said(), heard.tried()), heard.seen()))
        .toList();
  }

  private RuleBookSource source(Map<String, CauseEntry> causes, Map<String, Double> moved) {
    RuleBookSource from = book.source();
    Map<String, Parameter> parameters = new HashMap<>(from.parameters());
    moved.forEach(
        (id, number) ->
            parameters.put(id, new Parameter(id, "moved", null, "a test", "", "", number)));
    Catalog names = from.catalog();
    Catalog catalog =
        new Catalog(
            names.signs(),
            causes,
            names.findings(),
            names.adjustments(),
            names.cautions(),
            names.reasons(),
            names.practice(),
            names.folders());
    return new RuleBookSource(
        from.family(),
        from.version(),
        from.hash(),
        from.families(),
        from.vocabulary(),
        catalog,
        parameters,
        from.rules(),
        from.files(),
        from.pages(),
        from.wording(),
        from.everyday());
  }

  /** Every sentence that says how often a cause shows, in any fitting or in one of these. */
  Set<Shows> sentences(List<Heard> all) {
    Set<Shows> sentences =
        all.stream().flatMap(one -> one.said().shows().stream()).collect(Collectors.toSet());
    sentences.addAll(book.always().shows());
    sentences.removeIf(one -> one.howOften().equals("never"));
    return sentences;
  }

  /** The likeliest cause where one sentence says another word. */
  String withSentence(Shows sentence, String howOften, Heard heard) {
    List<Shows> of = new ArrayList<>(ofLink(heard.said().shows().stream().toList(), sentence));
    if (of.isEmpty()) {
      of.addAll(ofLink(book.always().shows().stream().toList(), sentence));
    }
    if (!of.contains(sentence)) {
      return first(heard); // a special sentence stands in its place
    }
    double middle =
        of.stream()
            .distinct()
            .mapToDouble(one -> plain.parameter(one.equals(sentence) ? howOften : one.howOften()))
            .average()
            .orElseThrow();
    Network network = plain.networkFor(heard.said(), heard.tried());
    return first(
        network.with(List.of(new Link(sentence.cause(), sentence.sign(), middle))), heard.seen());
  }

  private static List<Shows> ofLink(List<Shows> all, Shows link) {
    return all.stream()
        .filter(one -> one.cause().equals(link.cause()) && one.sign().equals(link.sign()))
        .toList();
  }

  /** The likeliest cause where a sign is seen oftener or less often with nothing wrong. */
  String withLeak(String sign, double times, Heard heard) {
    List<Observation> seen =
        heard.seen().stream()
            .map(
                one ->
                    one.sign().equals(sign)
                        ? new Observation(sign, one.present(), one.trust(), times * one.leakShare())
                        : one)
            .toList();
    return first(plain.networkFor(heard.said(), heard.tried()), seen);
  }

  double number(String parameter) {
    return plain.parameter(parameter);
  }
}
