package easewright.diagnosis;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toSet;

import easewright.diagnosis.Answer.RuleRef;
import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import easewright.inference.Link;
import easewright.inference.Network;
import easewright.inference.NetworkBuilder;
import easewright.inference.Posterior;
import easewright.inference.Question.Ask;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.Conclusions.Shows;
import easewright.rulebook.Conclusions.Worsens;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.RuleText;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What the rule book says in any fitting, prepared once: the network of causes and signs, and which
 * adjustment cures or worsens what. A fitting adds what its rules say for its own situation.
 */
final class Knowledge {
  private final RuleBookSource source;
  private final Conclusions always;
  private final Network network;
  private final Posterior beforehand;
  private final Map<String, Map<String, List<Shows>>> shows;
  private final Map<String, List<Cures>> curesOfCause;
  private final Map<String, Set<String>> worsenedBy;
  private final Map<String, RuleText> firstRules = new HashMap<>();
  private final Map<String, Double> parameters = new HashMap<>();
  private final Map<String, Map<String, Double>> words = new HashMap<>();
  private final SignsOfCauses signs;
  private final Map<String, RuleRef> refs = new HashMap<>();
  private final CauseLinks links = new CauseLinks(this);

  Knowledge(RuleBookSource source, Conclusions always) {
    this.source = source;
    this.always = always;
    source.parameters().forEach((id, parameter) -> parameters.put(id, parameter.number()));
    for (String kind : List.of("trust-", "leak-share-", "effort-", "ask-")) {
      parameters.forEach(
          (id, number) -> {
            if (id.startsWith(kind)) {
              words
                  .computeIfAbsent(kind, k -> new HashMap<>())
                  .put(id.substring(kind.length()), number);
            }
          });
    }
    NetworkBuilder builder = Network.builder();
    Catalog catalog = source.catalog();
    builder.nothingWrong(parameter("nothing-wrong"));
    catalog.causes().values().forEach(c -> builder.cause(c.id(), parameter(c.prior())));
    catalog.signs().values().stream()
        .filter(sign -> !sign.redFlag())
        .forEach(s -> builder.sign(s.id(), withoutFault(s.withoutFault())));
    catalog.findings().values().forEach(f -> builder.sign(f.id(), withoutFault(f.withoutFault())));
    catalog
        .adjustments()
        .keySet()
        .forEach(
            id -> {
              builder.sign(helped(id), parameter("helped-by-chance"));
              builder.sign(worse(id), parameter("worse-by-chance"));
            });
    Stream.concat(links.of(always.shows()).stream(), links.outcomes(always).stream())
        .forEach(link -> builder.link(link.cause(), link.sign(), link.strength()));
    catalog
        .practice()
        .areas()
        .forEach(
            area -> builder.sign(AreaAndChangeLinks.amiss(area.id()), withoutFault("sometimes")));
    AreaAndChangeLinks.areas(catalog, parameter("shown-in-its-area"))
        .forEach(link -> builder.link(link.cause(), link.sign(), link.strength()));
    this.network = builder.build();
    this.beforehand = Posterior.infer(network, List.of());
    this.shows = always.shows().stream().collect(groupingBy(Shows::cause, groupingBy(Shows::sign)));
    this.curesOfCause = always.cures().stream().collect(groupingBy(Cures::cause));
    this.worsenedBy =
        always.worsens().stream()
            .collect(groupingBy(Worsens::adjustment, mapping(Worsens::cause, toSet())));
    source.rules().forEach(rule -> firstRules.putIfAbsent(rule.file(), rule));
    this.signs = new SignsOfCauses(catalog, always.shows(), this::ask);
    source.rules().forEach(rule -> refs.put(rule.key(), ref(rule)));
  }

  private static RuleRef ref(RuleText rule) {
    return new RuleRef(
        rule.file(), rule.name(), rule.summary(), rule.source(), "/rules/" + rule.file());
  }

  /** A question about a sign: what it costs, and how far its replies are believed. */
  Ask ask(SignEntry sign) {
    return new Ask(
        sign.id(),
        parameter("ask-", sign.effort()),
        trustInReply(sign.id(), true),
        trustInReply(sign.id(), false));
  }

  /** How far a plain yes or no to a question is believed. */
  double trustInReply(String sign, boolean yes) {
    boolean fact = catalog().signs().get(sign).fact();
    return parameter("trust-", fact ? "fact" : yes ? "unstated" : "denied");
  }

  /** What signs tell of causes in any fitting. */
  SignsOfCauses signs() {
    return signs;
  }

  /** What is probable while nothing is known of the fitting. */
  Posterior beforehand() {
    return beforehand;
  }

  /** The network with what this fitting's rules and wearer say in place of the general word. */
  Network networkFor(Conclusions said, List<EarlierAdjustment> tried) {
    List<Link> links = new ArrayList<>(this.links.of(said.shows()));
    links.addAll(this.links.outcomes(said));
    Network special = links.isEmpty() ? network : network.with(links);
    List<Link> named =
        AreaAndChangeLinks.named(AreaAndChangeReports.last(tried), special, said, this);
    return named.isEmpty() ? special : special.with(named);
  }

  /** The rules behind one link in any fitting. */
  List<Shows> behind(String cause, String sign) {
    return shows.getOrDefault(cause, Map.of()).getOrDefault(sign, List.of());
  }

  /** Every cure of these causes in this fitting; the special word replaces the general one. */
  List<Cures> cures(Collection<String> causes, Conclusions said) {
    List<Cures> cures = new ArrayList<>();
    for (String cause : causes) {
      int before = cures.size();
      for (Cures cure : said.cures()) {
        if (cure.cause().equals(cause)) {
          cures.add(cure);
        }
      }
      List<Cures> special = List.copyOf(cures.subList(before, cures.size()));
      for (Cures cure : curesOfCause.getOrDefault(cause, List.of())) {
        if (!holds(special, cure.adjustment())) {
          cures.add(cure);
        }
      }
    }
    return cures;
  }

  private static boolean holds(List<Cures> cures, String adjustment) {
    for (Cures cure : cures) {
      if (cure.adjustment().equals(adjustment)) {
        return true;
      }
    }
    return false;
  }

  /** Every cause an adjustment makes worse in this fitting. */
  Set<String> worsened(String adjustment, Conclusions said) {
    Set<String> causes = new HashSet<>(worsenedBy.getOrDefault(adjustment, Set.of()));
    for (Worsens worsening : said.worsens()) {
      if (worsening.adjustment().equals(adjustment)) {
        causes.add(worsening.cause());
      }
    }
    return causes;
  }

  /** How an answer names a rule. */
  RuleRef named(RuleText rule) {
    return refs.get(rule.key());
  }

  /** The general rule of a file: the first it holds. */
  RuleText firstRule(String file) {
    return firstRules.get(file);
  }

  /** Whether a sign was seen that the catalog marks as one for a clinician. */
  boolean reportsRedFlag(Fitting fitting) {
    return fitting.signs().stream()
        .anyMatch(sign -> sign.present() && catalog().signs().get(sign.id()).redFlag());
  }

  Catalog catalog() {
    return source.catalog();
  }

  RuleBookSource source() {
    return source;
  }

  /** Value of a parameter, canonical units. */
  double parameter(String id) {
    Double known = parameters.get(id);
    return known != null ? known : source.parameter(id.replace(' ', '-'));
  }

  /** Value of a word, such as "trust-" of "clear". */
  double parameter(String kind, String word) {
    Map<String, Double> known = words.get(kind);
    Double value = known == null ? null : known.get(word);
    return value != null ? value : parameter(kind + word);
  }

  static String helped(String adjustment) {
    return "helped:" + adjustment;
  }

  static String worse(String adjustment) {
    return "worse:" + adjustment;
  }

  private double withoutFault(String word) {
    return parameter("without-fault-" + word);
  }
}
