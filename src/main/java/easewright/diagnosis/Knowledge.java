package easewright.diagnosis;

import static java.util.stream.Collectors.averagingDouble;
import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toSet;

import easewright.diagnosis.inference.Link;
import easewright.diagnosis.inference.Network;
import easewright.rulebook.Catalog;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.RuleText;
import easewright.rulebook.Statements;
import easewright.rulebook.Statements.Cures;
import easewright.rulebook.Statements.Shows;
import easewright.rulebook.Statements.Worsens;
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
  private final Statements always;
  private final Network network;
  private final Map<String, Map<String, List<Shows>>> shows;
  private final Map<String, List<Cures>> curesOfCause;
  private final Map<String, Set<String>> worsenedBy;
  private final Map<String, RuleText> firstRules = new HashMap<>();

  Knowledge(RuleBook book) {
    this.source = book.source();
    this.always = book.always();
    Network.Builder builder = Network.builder();
    Catalog catalog = source.catalog();
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
  }

  /** The network with what this fitting's rules say in place of the general word. */
  Network networkFor(Statements said) {
    List<Link> links = new ArrayList<>(links(said.shows()));
    links.addAll(outcomes(said));
    return links.isEmpty() ? network : network.with(links);
  }

  /** The rules behind one link: those of this fitting's situation, or the general ones. */
  List<Shows> behind(String cause, String sign, Statements said) {
    List<Shows> special =
        said.shows().stream()
            .filter(s -> s.cause().equals(cause) && s.sign().equals(sign))
            .toList();
    return special.isEmpty()
        ? shows.getOrDefault(cause, Map.of()).getOrDefault(sign, List.of())
        : special;
  }

  /** Every cure of these causes in this fitting; the special word replaces the general one. */
  List<Cures> cures(Collection<String> causes, Statements said) {
    List<Cures> cures = new ArrayList<>();
    for (String cause : causes) {
      List<Cures> special =
          said.cures().stream().filter(cure -> cure.cause().equals(cause)).toList();
      cures.addAll(special);
      curesOfCause.getOrDefault(cause, List.of()).stream()
          .filter(c -> special.stream().noneMatch(s -> s.adjustment().equals(c.adjustment())))
          .forEach(cures::add);
    }
    return cures;
  }

  /** Every cause an adjustment makes worse in this fitting. */
  Set<String> worsened(String adjustment, Statements said) {
    Set<String> causes = new HashSet<>(worsenedBy.getOrDefault(adjustment, Set.of()));
    said.worsens().stream()
        .filter(w -> w.adjustment().equals(adjustment))
        .forEach(w -> causes.add(w.cause()));
    return causes;
  }

  /** Signs and findings a cause shows as in any fitting. */
  Set<String> signsOf(String cause) {
    return shows.getOrDefault(cause, Map.of()).keySet();
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
    return source.parameter(id.replace(' ', '-'));
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
    // A rule that matches twice, as for a sign on the left and on the right, speaks once.
    Map<String, Map<String, Double>> middle =
        shows.stream()
            .distinct()
            .collect(
                groupingBy(
                    Shows::cause,
                    groupingBy(Shows::sign, averagingDouble(s -> parameter(s.howOften())))));
    List<Link> links = new ArrayList<>();
    middle.forEach(
        (cause, row) ->
            row.forEach((sign, strength) -> links.add(new Link(cause, sign, strength))));
    return links;
  }

  /** An earlier change that helped speaks for what it cures; one that hurt, for what it worsens. */
  private List<Link> outcomes(Statements said) {
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
