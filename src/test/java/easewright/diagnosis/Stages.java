package easewright.diagnosis;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.fitting.Fitting;
import easewright.inference.CauseProbability;
import easewright.inference.Network;
import easewright.inference.Posterior;
import easewright.pattern.PatternSheets;
import easewright.rulebook.Conclusions;
import easewright.rulebook.RuleBook;
import easewright.rulebook.facts.AnyFitting;
import java.util.ArrayList;
import java.util.List;

/** The stages of one diagnosis one by one, each with what the earlier ones gave, to be timed. */
public final class Stages {
  private final PlainWeighing plain = new PlainWeighing();
  private final Fitting fitting;
  private final Draft draft;
  private final FittingNumbers numbers;
  private final List<Object> facts;
  private final RulesByHand.Known known;
  private final Conclusions said;
  private final List<Report> reports;
  private final Posterior posterior;
  private final List<CauseProbability> mentioned;

  public Stages(Fitting fitting) {
    this.fitting = fitting;
    this.numbers = Answering.numbers(fitting);
    this.draft = numbers.draft();
    this.facts = Facts.of(fitting, draft, numbers.figures().values(), Answering.tried(fitting));
    this.known = RulesByHand.known(fitting);
    this.said = Answering.consult(facts);
    this.reports = reports();
    this.posterior = posterior();
    this.mentioned = posterior.causesFrom(Answering.KNOWLEDGE.parameter("worth-mentioning"));
  }

  /** A fitting read by the service's reader. */
  public static Fitting read(JsonNode json) {
    return Answering.read(json);
  }

  /** The book compiled into the application. */
  public static RuleBook book() {
    return Answering.BOOK;
  }

  /** The first answer of a service with this book. */
  public static Answer first(RuleBook book, Fitting fitting) {
    return new Diagnosis(book, new PatternSheets().shipped()).answer(fitting);
  }

  public Answer whole() {
    return Answering.DIAGNOSIS.answer(fitting);
  }

  public List<Object> facts() {
    return facts;
  }

  public Object figures() {
    return Answering.figures(fitting);
  }

  /** What rules say before weighing. */
  public Conclusions rules() {
    return Answering.consult(facts);
  }

  /** The same where what holds in any fitting was not collected once: it fires each time. */
  public Conclusions allRules() {
    List<Object> all = new ArrayList<>(facts);
    all.add(new AnyFitting());
    return Answering.consult(all);
  }

  /** What the same rules say without an engine, tried one after another. */
  public Object rulesByHand() {
    return RulesByHand.said(known.copy());
  }

  /** The links of this fitting laid over those of any fitting. */
  public Network links() {
    return Answering.KNOWLEDGE.networkFor(said, Answering.tried(fitting));
  }

  /** All links laid anew, as they are when everything fires each time. */
  public Network allLinks(Conclusions everything) {
    return Answering.KNOWLEDGE.networkFor(everything, Answering.tried(fitting));
  }

  public Posterior inference() {
    return posterior();
  }

  /** Links, sums and all by maps and loops, see {@link PlainWeighing}. */
  public Object plainInference() {
    return plain.weigh(plain.seen(fitting, said), said);
  }

  /** Findings and causes with their evidence, each report left out in turn. */
  public Object explanation() {
    Explaining explaining =
        new Explaining(
            Answering.KNOWLEDGE, said, reports, null, new UnitFormatter(fitting.units()));
    return List.of(explaining.findings(), explaining.causes(posterior, mentioned));
  }

  public Object advice() {
    Amounts amounts = new Amounts(numbers);
    Placing placing = new Placing(draft, amounts, Answering.BOOK.source().wording(), null);
    List<String> inPlay = mentioned.stream().map(CauseProbability::cause).toList();
    CureAmounts cureAmounts = new CureAmounts(fitting, Answering.KNOWLEDGE, posterior, amounts);
    Knowledge knowledge = Answering.KNOWLEDGE;
    EarlierOutcomes tried =
        new EarlierOutcomes(fitting, Answering.tried(fitting), Answering.BOOK.source());
    AmountLimits limits =
        new AmountLimits(knowledge, new UnitFormatter(fitting.units()), tried.helped(), fitting);
    Restraints restraints = new Restraints(knowledge.catalog(), said, cureAmounts, false, false);
    Candidates candidates =
        new Candidates(knowledge, posterior, said, cureAmounts, restraints, tried);
    Advice.Ranked ranked =
        new Advice(
                knowledge,
                said,
                inPlay,
                candidates,
                limits,
                restraints,
                cureAmounts,
                tried,
                new Certainty(knowledge, posterior, new UnitFormatter(fitting.units()), tried))
            .ranked();
    return new Advising(Answering.KNOWLEDGE, posterior, placing, tried, fitting)
        .notes(ranked, false);
  }

  public Object questions() {
    return new Asking(Answering.KNOWLEDGE, posterior, reports, fitting, null, java.util.Set.of())
        .questions(false, java.util.Optional.empty());
  }

  private List<Report> reports() {
    return Report.of(fitting, Answering.tried(fitting), said, Answering.KNOWLEDGE);
  }

  private Posterior posterior() {
    return Posterior.infer(links(), reports.stream().map(Report::observation).toList());
  }
}
