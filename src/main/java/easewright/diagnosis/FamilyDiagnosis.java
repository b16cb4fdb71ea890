package easewright.diagnosis;

import easewright.diagnosis.Answer.CautionNote;
import easewright.diagnosis.Answer.MeasureAgainNote;
import easewright.diagnosis.Answer.SignNote;
import easewright.diagnosis.inference.CauseProbability;
import easewright.diagnosis.inference.Posterior;
import easewright.measure.Plausibility;
import easewright.rulebook.Conclusions;
import easewright.rulebook.RuleBook;
import easewright.rulebook.facts.InPlay;
import easewright.size.SizeEstimate;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Answers fittings of one kind of garment. Immutable and safe to share between threads. */
final class FamilyDiagnosis {
  private final RuleBook book;
  private final Knowledge knowledge;
  private final Sizing sizing;
  private final Plausibility plausibility;

  FamilyDiagnosis(RuleBook book, Sizing sizing) {
    this.book = book;
    this.knowledge = new Knowledge(book);
    this.sizing = sizing;
    this.plausibility = new Plausibility(book.catalog().practice().measures());
  }

  /** Judges, weighs, infers, works out amounts and ranks. */
  Answer answer(Fitting fitting, boolean doubtful) {
    Draft draft = Draft.of(fitting, book.source());
    SizeEstimate sizes = sizing.estimate(fitting).orElse(null);
    FittingNumbers numbers = Figures.of(fitting, draft, sizes, book.source());
    try (RuleBook.Consultation consultation = book.open()) {
      Conclusions said = consultation.hear(Facts.of(fitting, draft, numbers.figures().values()));
      Cautioning cautioning = new Cautioning(knowledge, fitting, said, doubtful);
      if (cautioning.danger()) {
        return ofDanger(fitting, cautioning);
      }
      List<Report> reports = Report.of(fitting, said, knowledge);
      Posterior posterior =
          Posterior.infer(
              knowledge.networkFor(said), reports.stream().map(Report::observation).toList());
      Amounts amounts = new Amounts(numbers);
      String size = sizes == null ? null : sizes.best().map(best -> best.cell().id()).orElse(null);
      Placing placing = new Placing(draft, amounts, book.source().wording(), size);
      List<CauseProbability> mentioned = mentioned(posterior);
      consultation.hear(inPlay(mentioned));
      if (cautioning.danger()) {
        return ofDanger(fitting, cautioning);
      }
      CureAmounts cureAmounts = new CureAmounts(fitting, knowledge, posterior, amounts);
      return answer(
          fitting,
          draft,
          sizes,
          said,
          reports,
          posterior,
          mentioned,
          cureAmounts,
          new Advising(knowledge, posterior, placing),
          cautioning);
    }
  }

  private Answer ofDanger(Fitting fitting, Cautioning cautioning) {
    List<CautionNote> cautions = cautioning.notes();
    return Answer.ofDanger(
        stamp(),
        Understanding.of(fitting, knowledge.catalog()),
        cautions,
        cautioning.notNow(cautions));
  }

  private Answer.RuleBookStamp stamp() {
    return new Answer.RuleBookStamp(book.source().version(), book.source().hash());
  }

  /** What rules may still want to know once causes are weighed. */
  private List<InPlay> inPlay(List<CauseProbability> mentioned) {
    double likely = knowledge.parameter("likely");
    return mentioned.stream()
        .map(cause -> new InPlay(cause.cause(), cause.probability() >= likely))
        .toList();
  }

  private static List<String> names(List<CauseProbability> causes) {
    return causes.stream().map(CauseProbability::cause).toList();
  }

  private List<CauseProbability> mentioned(Posterior posterior) {
    return posterior.causesFrom(knowledge.parameter("worth-mentioning"));
  }

  private Answer answer(
      Fitting fitting,
      Draft draft,
      SizeEstimate sizes,
      Conclusions said,
      List<Report> reports,
      Posterior posterior,
      List<CauseProbability> mentioned,
      CureAmounts amounts,
      Advising advising,
      Cautioning cautioning) {
    UnitFormatter shown = new UnitFormatter(fitting.units());
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
    AmountLimits limits = new AmountLimits(knowledge, shown);
    Candidates candidates = new Candidates(knowledge, posterior, said, amounts, limits, restraints);
    Advice.Ranked ranked =
        new Advice(knowledge, said, names(mentioned), candidates, limits, restraints).ranked();
    Asking asking = new Asking(knowledge, posterior, reports, fitting, tightening);
    List<CautionNote> cautions = cautioning.notes();
    return new Answer(
        stamp(),
        Understanding.of(fitting, knowledge.catalog()),
        cautions,
        cautioning.notNow(cautions),
        sizes == null ? null : sizing.advice(fitting, sizes, nothingTighter),
        new Cloths(draft, book.source().wording(), shown).results(fitting),
        explaining.findings(),
        explaining.causes(posterior, mentioned),
        posterior.probability(posterior.first()) >= knowledge.parameter("likely"),
        Explaining.rounded(posterior.nothing()),
        advising.notes(ranked),
        advising.heldBack(ranked),
        asking.questions(),
        unexplained(fitting, posterior),
        asking.whyNot(fitting.whyNot()),
        Missing.of(fitting, book.source().wording()),
        measureAgain(fitting),
        null,
        null);
  }

  private List<SignNote> unexplained(Fitting fitting, Posterior posterior) {
    Set<String> left =
        posterior.unexplained(knowledge.parameter("unexplained-ratio")).stream()
            .map(seen -> seen.sign())
            .collect(Collectors.toSet());
    return fitting.signs().stream()
        .filter(sign -> sign.present() && left.contains(sign.id()))
        .map(sign -> Understanding.sign(sign, knowledge.catalog(), fitting.units()))
        .toList();
  }

  private List<MeasureAgainNote> measureAgain(Fitting fitting) {
    return plausibility.check(fitting.body()).stream()
        .map(
            remark ->
                new MeasureAgainNote("/body/" + remark.field(), remark.problem(), remark.remedy()))
        .toList();
  }
}
