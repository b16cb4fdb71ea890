package easewright.diagnosis;

import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.EvidenceNote;
import easewright.diagnosis.Answer.FigureNote;
import easewright.diagnosis.Answer.FindingNote;
import easewright.diagnosis.Answer.LimitNote;
import easewright.diagnosis.Answer.RuleRef;
import easewright.inference.CauseProbability;
import easewright.inference.Posterior;
import easewright.inference.WeightsOfEvidence;
import easewright.inference.WeightsOfEvidence.Weight;
import easewright.rulebook.Catalog;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Judged;
import easewright.rulebook.Conclusions.Shows;
import easewright.rulebook.Parameter;
import easewright.rulebook.RuleText;
import easewright.rulebook.facts.Figure;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Turns findings and probabilities into notes that name their rules, numbers and weights. */
final class Explaining {
  private final Knowledge knowledge;
  private final Conclusions said;
  private final Map<String, Report> reports;
  private final Map<String, List<Shows>> special = new HashMap<>();
  private final Tightening tightening;
  private final UnitFormatter shown;

  /**
   * @param tightening what must not be spoken of; null where everything may be
   */
  Explaining(
      Knowledge knowledge,
      Conclusions said,
      List<Report> reports,
      Tightening tightening,
      UnitFormatter shown) {
    this.tightening = tightening;
    this.knowledge = knowledge;
    this.said = said;
    this.reports =
        reports.stream()
            .collect(Collectors.toMap(r -> r.observation().sign(), Function.identity()));
    said.shows().forEach(s -> special.computeIfAbsent(s.cause(), c -> new ArrayList<>()).add(s));
    this.shown = shown;
  }

  List<FindingNote> findings() {
    Map<String, Judged> once = new LinkedHashMap<>();
    said.judged().forEach(judged -> once.putIfAbsent(judged.finding(), judged));
    return once.values().stream()
        .map(this::finding)
        .sorted(Comparator.comparing((FindingNote f) -> !f.holds()).thenComparing(FindingNote::id))
        .toList();
  }

  private FindingNote finding(Judged judged) {
    Catalog.FindingEntry entry = knowledge.catalog().findings().get(judged.finding());
    return new FindingNote(
        entry.id(),
        entry.name(),
        judged.holds(),
        judged.holds() ? entry.says() : entry.saysNot(),
        rounded(trust(judged)),
        judged.from().stream()
            .filter(Figure.class::isInstance)
            .map(fact -> figure((Figure) fact))
            .toList(),
        judged.rule().comparisons().stream().map(this::limit).toList(),
        knowledge.named(judged.rule()));
  }

  /** Weighed already where it counts as evidence. */
  private double trust(Judged judged) {
    Report report = reports.get(judged.finding());
    return report == null
        ? new FindingTrust(said, knowledge).of(judged)
        : report.observation().trust();
  }

  private FigureNote figure(Figure figure) {
    return new FigureNote(
        figure.id().replace('-', ' '),
        rounded(figure.value()),
        figure.unit(),
        shown.value(figure.value(), figure.unit()),
        figure.formula());
  }

  private LimitNote limit(RuleText.Comparison comparison) {
    Parameter parameter = knowledge.source().parameters().get(comparison.parameter());
    return new LimitNote(parameter.id(), parameter.text(), comparison.how(), parameter.source());
  }

  List<CauseNote> causes(Posterior posterior, List<CauseProbability> mentioned) {
    if (mentioned.isEmpty()) {
      return List.of();
    }
    WeightsOfEvidence weights = WeightsOfEvidence.of(posterior);
    return mentioned.stream().map(cause -> cause(cause, weights)).toList();
  }

  private CauseNote cause(CauseProbability likely, WeightsOfEvidence weights) {
    Catalog.CauseEntry entry = knowledge.catalog().causes().get(likely.cause());
    List<EvidenceNote> evidence =
        weights.weightsThatTell(entry.id()).stream()
            .filter(w -> tightening == null || !tightening.wasTried(w.observation().sign()))
            .map(w -> evidence(entry.id(), w))
            .toList();
    return new CauseNote(
        entry.id(),
        entry.name(),
        entry.says(),
        rounded(likely.probability()),
        rounded(weights.priorDecibans(entry.id())),
        rounded(weights.posteriorDecibans(entry.id())),
        evidence.stream()
            .filter(e -> e.decibans() > 0)
            .sorted(Comparator.comparingDouble(e -> -e.decibans()))
            .toList(),
        evidence.stream()
            .filter(e -> e.decibans() <= 0)
            .sorted(Comparator.comparingDouble(EvidenceNote::decibans))
            .toList(),
        knowledge.named(knowledge.firstRule(entry.id())));
  }

  private EvidenceNote evidence(String cause, Weight weight) {
    String sign = weight.observation().sign();
    Report report = reports.get(sign);
    return new EvidenceNote(
        Report.wireId(sign),
        report.name(),
        report.kind(),
        weight.observation().present(),
        rounded(weight.decibans()),
        words(weight.decibans()),
        rounded(weight.probabilityWithout()),
        behind(cause, sign));
  }

  /** The rules behind one link: those of this fitting's situation, or the general ones. */
  private List<RuleRef> behind(String cause, String sign) {
    List<RuleRef> rules = new ArrayList<>();
    for (Shows shows : special.getOrDefault(cause, List.of())) {
      if (shows.sign().equals(sign)) {
        rules.add(knowledge.named(shows.rule()));
      }
    }
    if (rules.isEmpty()) {
      knowledge.behind(cause, sign).forEach(shows -> rules.add(knowledge.named(shows.rule())));
    }
    return rules;
  }

  private String words(double decibans) {
    double size = Math.abs(decibans);
    String strength =
        size >= knowledge.parameter("weight-strong")
            ? "strongly-"
            : size >= knowledge.parameter("weight-clear") ? "" : "slightly-";
    return knowledge
        .source()
        .wording()
        .say("weight-" + strength + (decibans > 0 ? "for" : "against"));
  }

  /** Four decimals: finer than any number here deserves, coarse enough to read. */
  static double rounded(double value) {
    return Math.round(value * 10_000) / 10_000.0;
  }
}
