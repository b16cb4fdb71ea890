package easewright.diagnosis;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toSet;

import easewright.diagnosis.inference.Link;
import easewright.diagnosis.inference.Network;
import easewright.diagnosis.inference.NetworkBuilder;
import easewright.diagnosis.inference.Question.Ask;
import easewright.rulebook.Catalog;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.Conclusions.Shows;
import easewright.rulebook.Conclusions.Worsens;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.RuleText;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
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
  private final Map<String, Map<String, List<Shows>>> shows;
  private final Map<String, List<Cures>> curesOfCause;
  private final Map<String, Set<String>> worsenedBy;
  private final Map<String, RuleText> firstRules = new HashMap<>();
  private final Map<String, Double> parameters = new HashMap<>();
  private final Map<String, Map<String, Double>> words = new HashMap<>();
  private final Map<String, List<Ask>> asks;

  Knowledge(RuleBook book) {
    this.source = book.source();
    this.always = book.always();
    source.parameters().forEach((id, parameter) -> parameters.put(id, parameter.number()));
    for (String kind : List.of("trust-", "effort-", "ask-")) {
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
    Stream.concat(links(always.shows()).stream(), outcomes(always).stream())
        .forEach(link -> builder.link(link.cause(), link.sign(), link.strength()));
    this.network = builder.build();
    this.shows = always.shows().stream().collect(groupingBy(Shows::cause, groupingBy(Shows::sign)));
    this.curesOfCause = always.cures().stream().collect(groupingBy(Cures::cause));
    this.worsenedBy =
        always.worsens().stream()
            .collect(groupingBy(Worsens::adjustment, mapping(Worsens::cause, toSet())));
    source.rules().forEach(rule -> firstRules.putIfAbsent(rule.file(), rule));
    this.asks = asks();
  }

  private Map<String, List<Ask>> asks() {
    double trust = parameter("trust-unstated");
    double trustInNo = parameter("trust-denied");
    Map<String, List<Ask>> asks = new HashMap<>();
    shows.forEach(
        (cause, signs) ->
            asks.put(
                cause,
                signs.keySet().stream()
                    .map(catalog().signs()::get)
                    .filter(Objects::nonNull)
                    .map(s -> new Ask(s.id(), parameter("ask-", s.effort()), trust, trustInNo))
                    .toList()));
    return asks;
  }

  /** What may be asked about the signs a cause shows as in any fitting. */
  List<Ask> asks(String cause) {
    return asks.getOrDefault(cause, List.of());
  }

  /** The network with what this fitting's rules say in place of the general word. */
  Network networkFor(Conclusions said) {
    List<Link> links = new ArrayList<>(links(said.shows()));
    links.addAll(outcomes(said));
    return links.isEmpty() ? network : network.with(links);
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

  /** Where several rules speak of one link, their middle counts: no order among rules matters. */
  private List<Link> links(Collection<Shows> shows) {
    Map<String, Map<String, List<Shows>>> byLink = new HashMap<>();
    for (Shows one : shows) {
      List<Shows> same =
          byLink
              .computeIfAbsent(one.cause(), c -> new HashMap<>())
              .computeIfAbsent(one.sign(), s -> new ArrayList<>(1));
      // A rule that matches twice, as for a sign on the left and on the right, speaks once.
      if (!same.contains(one)) {
        same.add(one);
      }
    }
    List<Link> links = new ArrayList<>();
    byLink.forEach(
        (cause, row) ->
            row.forEach((sign, same) -> links.add(new Link(cause, sign, middle(same)))));
    return links;
  }

  private double middle(List<Shows> shows) {
    return shows.size() == 1
        ? parameter(shows.get(0).howOften())
        : shows.stream().mapToDouble(s -> parameter(s.howOften())).average().orElseThrow();
  }

  /** An earlier change that helped speaks for what it cures; one that hurt, for what it worsens. */
  private List<Link> outcomes(Conclusions said) {
    Map<List<String>, Double> strengths = new HashMap<>();
    for (Cures cure : said.cures()) {
      strengths.merge(
          List.of(cure.cause(), helped(cure.adjustment())),
          parameter("helped-per-cure") * parameter(cure.howMuch()),
          Math::max);
    }
    for (Worsens worsening : said.worsens()) {
      strengths.put(
          List.of(worsening.cause(), worse(worsening.adjustment())),
          parameter("worse-where-worsening"));
    }
    return strengths.entrySet().stream()
        .map(e -> new Link(e.getKey().get(0), e.getKey().get(1), e.getValue()))
        .toList();
  }
}
