package easewright.diagnosis;

import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CautionNote;
import easewright.diagnosis.Answer.HeldBackNote;
import easewright.diagnosis.Answer.MeasureAgainNote;
import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import easewright.inference.CauseProbability;
import easewright.inference.Posterior;
import easewright.measure.Plausibility;
import easewright.rulebook.Conclusions;
import easewright.rulebook.RuleBook;
import easewright.rulebook.facts.InPlay;
import easewright.size.SizeEstimate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Answers fittings of one kind of garment. Immutable and safe to share between threads. */
final class FamilyDiagnosis {
  private final RuleBook book;
  private final Knowledge knowledge;
  private final Sizing sizing;
  private final Plausibility plausibility;

  FamilyDiagnosis(RuleBook book, Sizing sizing) {
    this.book = book;
    this.knowledge = new Knowledge(book.source(), book.always());
    this.sizing = sizing;
    this.plausibility = book.source().plausibility();
  }

  /**
   * Judges, weighs, infers, works out amounts and ranks.
   *
   * @param lean whether what only a full answer's JSON holds is left empty
   */
  Answer answer(Fitting told, WordsLeft left, boolean lean) {
    Fitting fitting = ToilesCompared.with(told, book.source());
    Draft draft = Draft.of(fitting, book.source());
    SizeEstimate sizes = sizing.estimate(fitting).orElse(null);
    FittingNumbers numbers = Figures.of(fitting, draft, sizes, book.source());
    List<EarlierAdjustment> changes = TriedChanges.of(fitting, book.source());
    try (RuleBook.Consultation consultation = book.open()) {
      Conclusions said =
          consultation.hear(Facts.of(fitting, draft, numbers.figures().values(), changes));
      Cautioning cautioning = new Cautioning(knowledge, fitting, said, left);
      if (cautioning.stopsHere()) {
        return ofDanger(fitting, draft, cautioning, null);
      }
      List<Report> reports = Report.of(fitting, changes, said, knowledge);
      Posterior posterior = posterior(said, changes, reports);
      Amounts amounts = new Amounts(numbers);
      String size = sizes == null ? null : sizes.best().map(best -> best.cell().id()).orElse(null);
      Placing placing = new Placing(draft, amounts, book.source().wording(), size);
      List<CauseProbability> mentioned =
          posterior.causesFrom(knowledge.parameter("worth-mentioning"));
      consultation.hear(inPlay(mentioned));
      if (cautioning.stopsHere()) {
        return ofDanger(fitting, draft, cautioning, null);
      }
      EarlierOutcomes tried = new EarlierOutcomes(fitting, changes, book.source());
      Answer answer =
          answer(
              numbers,
              said,
              reports,
              posterior,
              mentioned,
              new CureAmounts(fitting, knowledge, posterior, amounts),
              new Advising(knowledge, posterior, placing, tried, fitting),
              tried,
              cautioning,
              lean);
      return cautioning.danger() ? ofDanger(fitting, draft, cautioning, answer.roomier()) : answer;
    }
  }

  /** How probable each cause is, also those not worth mentioning. */
  Map<String, Double> causes(Fitting told) {
    Fitting fitting = ToilesCompared.with(told, book.source());
    Draft draft = Draft.of(fitting, book.source());
    SizeEstimate sizes = sizing.estimate(fitting).orElse(null);
    FittingNumbers numbers = Figures.of(fitting, draft, sizes, book.source());
    try (RuleBook.Consultation consultation = book.open()) {
      List<EarlierAdjustment> changes = TriedChanges.of(fitting, book.source());
      Conclusions said =
          consultation.hear(Facts.of(fitting, draft, numbers.figures().values(), changes));
      return byCause(posterior(said, changes, Report.of(fitting, changes, said, knowledge)));
    }
  }

  /** The same while nothing is known. */
  Map<String, Double> causesBefore() {
    return byCause(posterior(book.always(), List.of(), List.of()));
  }

  private static Map<String, Double> byCause(Posterior posterior) {
    return posterior.causesFrom(0).stream()
        .collect(Collectors.toMap(CauseProbability::cause, CauseProbability::probability));
  }

  private Posterior posterior(
      Conclusions said, List<EarlierAdjustment> changes, List<Report> reports) {
    return Posterior.infer(
        knowledge.networkFor(said, changes), reports.stream().map(Report::observation).toList());
  }

  private Answer ofDanger(
      Fitting fitting, Draft draft, Cautioning cautioning, AdjustmentNote afterwards) {
    List<CautionNote> cautions = cautioning.notes();
    return Answer.ofDanger(
        stamp(),
        Understanding.of(fitting, draft, knowledge.source(), true),
        cautions,
        cautioning.notNow(cautions),
        afterwards);
  }

  private Answer.RuleBookStamp stamp() {
    return new Answer.RuleBookStamp(book.source().version(), book.source().hash());
  }

  /** What rules may still want to know once causes are weighed. */
  private List<InPlay> inPlay(List<CauseProbability> mentioned) {
    return mentioned.stream()
        .map(
            cause ->
                new InPlay(cause.cause(), cause.probability() >= knowledge.parameter("likely")))
        .toList();
  }

  private Answer answer(
      FittingNumbers numbers,
      Conclusions said,
      List<Report> reports,
      Posterior posterior,
      List<CauseProbability> mentioned,
      CureAmounts amounts,
      Advising advising,
      EarlierOutcomes tried,
      Cautioning cautioning,
      boolean lean) {
    Fitting fitting = numbers.fitting();
    SizeEstimate sizes = numbers.sizes();
    UnitFormatter shown = numbers.shown();
    // Asked after weighing, since what is likely may have stopped tightening too.
    boolean nothingTighter = cautioning.nothingTighter();
    Tightening tightening = nothingTighter ? new Tightening(knowledge, said) : null;
    Explaining explaining = new Explaining(knowledge, said, reports, tightening, shown);
    Restraints restraints =
        new Restraints(
            knowledge.catalog(),
            said,
            amounts,
            nothingTighter,
            nothingTighter && !sizing.isNoSmaller(fitting, sizes));
    AmountLimits limits = new AmountLimits(knowledge, shown, tried.helped(), fitting);
    Candidates candidates = new Candidates(knowledge, posterior, said, amounts, restraints, tried);
    Certainty certainty = new Certainty(knowledge, posterior, shown, tried);
    Advice.Ranked ranked =
        new Advice(
                knowledge,
                said,
                mentioned.stream().map(CauseProbability::cause).toList(),
                candidates,
                limits,
                restraints,
                amounts,
                tried,
                certainty)
            .ranked();
    Asking asking =
        new Asking(knowledge, posterior, reports, fitting, tightening, Asking.known(numbers, said));
    List<CautionNote> cautions = cautioning.notes();
    Optional<DoubtedReading> doubted = DoubtedReading.of(knowledge, posterior, reports);
    boolean clear = doubted.isEmpty() && certainty.isClear(ranked.first());
    String noFault =
        new Soundness(fitting, knowledge, said, posterior)
            .noFault(!mentioned.isEmpty() || cautioning.left().statement());
    List<AdjustmentNote> changes = advising.notes(ranked, nothingTighter);
    List<HeldBackNote> heldBack = advising.heldBack(ranked);
    AskedAbout asked =
        new AskedAbout(
            knowledge,
            restraints,
            changes,
            heldBack,
            clear,
            !mentioned.isEmpty(),
            !said.noTightening().isEmpty());
    return new Answer(
        stamp(),
        Understanding.of(fitting, numbers.draft(), knowledge.source(), nothingTighter),
        cautions,
        cautioning.notNow(cautions),
        null,
        asked.notes(fitting, noFault),
        sizes == null ? null : sizing.advice(fitting, sizes, nothingTighter, lean),
        lean ? List.of() : new Cloths(numbers.draft(), knowledge, shown).results(fitting),
        lean ? List.of() : explaining.findings(),
        explaining.causes(posterior, mentioned),
        clear,
        Explaining.rounded(posterior.nothing()),
        noFault,
        tried.failed(nothingTighter),
        changes,
        new FirstTrial(knowledge, posterior, restraints, amounts, limits).in(ranked, fitting),
        heldBack,
        noFault == null ? asking.questions(clear, doubted) : List.of(),
        noFault == null
            ? Understanding.unexplained(fitting, posterior, mentioned, knowledge)
            : List.of(),
        asking.whyNot(fitting.whyNot()),
        lean ? List.of() : Missing.of(fitting, numbers.draft(), book.source()),
        measureAgain(fitting),
        List.of(),
        null,
        null);
  }

  private List<MeasureAgainNote> measureAgain(Fitting fitting) {
    return plausibility.check(fitting.body()).stream()
        .map(
            remark ->
                new MeasureAgainNote("/body/" + remark.field(), remark.problem(), remark.remedy()))
        .toList();
  }
}
