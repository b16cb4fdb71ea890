package easewright.diagnosis;

import static java.util.stream.Collectors.toMap;

import easewright.diagnosis.Answer.CauseChance;
import easewright.diagnosis.Answer.ChangeNote;
import easewright.diagnosis.Answer.QuestionNote;
import easewright.diagnosis.Answer.ShiftNote;
import easewright.diagnosis.Answer.WhyNotNote;
import easewright.diagnosis.inference.CauseProbability;
import easewright.diagnosis.inference.Observation;
import easewright.diagnosis.inference.Posterior;
import easewright.diagnosis.inference.Question;
import easewright.diagnosis.inference.Question.Ask;
import easewright.diagnosis.inference.Questions;
import easewright.diagnosis.inference.WhyNot;
import easewright.diagnosis.inference.WhyNot.Turn;
import easewright.rulebook.Catalog.SignEntry;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Finds what is most worth asking next, and what would put another cause first. */
final class Asking {
  private static final int MOST_QUESTIONS = 5;
  private static final int MOST_TURNS = 3;

  /** Less than this does not show in whole percentages. */
  private static final double LEAST_SHIFT = 0.01;

  private final Knowledge knowledge;
  private final Posterior posterior;
  private final Map<String, Report> reports;
  private final Photos photos;
  private final Tightening tightening;
  private final Set<String> notToTell;
  private final double trust;
  private final double trustInNo;

  /**
   * @param tightening what must not be spoken of; null where everything may be
   */
  Asking(
      Knowledge knowledge,
      Posterior posterior,
      List<Report> reports,
      Fitting fitting,
      Tightening tightening) {
    this.tightening = tightening;
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.reports = reports.stream().collect(toMap(r -> r.observation().sign(), r -> r));
    this.photos = new Photos(knowledge, fitting);
    this.notToTell = Set.copyOf(fitting.couldNotTell());
    this.trust = knowledge.parameter("trust-unstated");
    this.trustInNo = knowledge.parameter("trust-denied");
  }

  List<QuestionNote> questions() {
    return Questions.rank(posterior, asks(inPlay()), MOST_QUESTIONS).stream()
        .map(this::note)
        .toList();
  }

  private List<String> inPlay() {
    return posterior.causesFrom(knowledge.parameter("ask-about")).stream()
        .map(CauseProbability::cause)
        .toList();
  }

  /** Signs neither reported nor asked in vain that bear on one of these causes, by name. */
  private Collection<Ask> asks(Collection<String> causes) {
    TreeMap<String, Ask> asks = new TreeMap<>();
    for (String cause : causes) {
      for (Ask ask : knowledge.asks(cause)) {
        if (!reports.containsKey(ask.sign()) && !notToTell.contains(ask.sign())) {
          asks.put(ask.sign(), ask);
        }
      }
    }
    return asks.values();
  }

  private QuestionNote note(Question question) {
    SignEntry sign = knowledge.catalog().signs().get(question.sign());
    return new QuestionNote(
        sign.id(),
        sign.ask(),
        sign.check(),
        sign.effort(),
        Explaining.rounded(question.bits()),
        Explaining.rounded(question.yes().probability()),
        chances(foretold(question.yes().causes())),
        chances(foretold(question.no().causes())),
        shift(foretold(question.yes().causes())),
        shift(foretold(question.no().causes())),
        photos.of(sign).orElse(null));
  }

  /** What a reply would point to is left unsaid where it may point to something tighter. */
  private List<CauseProbability> foretold(List<CauseProbability> causes) {
    return tightening == null ? causes : List.of();
  }

  /**
   * What is likelier says more than what is less likely, so that is named only where nothing is.
   */
  private ShiftNote shift(List<CauseProbability> after) {
    Comparator<ShiftNote> byRise = Comparator.comparingDouble(note -> note.to() - note.from());
    List<ShiftNote> shifts =
        after.stream()
            .map(
                cause ->
                    new ShiftNote(
                        cause.cause(),
                        knowledge.catalog().nameOf(cause.cause()),
                        Explaining.rounded(posterior.probability(cause.cause())),
                        Explaining.rounded(cause.probability())))
            .filter(note -> Math.abs(note.to() - note.from()) >= LEAST_SHIFT)
            .sorted(byRise)
            .toList();
    if (shifts.isEmpty()) {
      return null;
    }
    ShiftNote risen = shifts.get(shifts.size() - 1);
    return risen.to() > risen.from() ? risen : shifts.get(0);
  }

  private List<CauseChance> chances(List<CauseProbability> causes) {
    return causes.stream()
        .map(
            cause ->
                new CauseChance(
                    cause.cause(),
                    knowledge.catalog().nameOf(cause.cause()),
                    Explaining.rounded(cause.probability())))
        .toList();
  }

  /** Answers "why not this cause?"; nothing to say of the one that is first. */
  List<WhyNotNote> whyNot(List<String> causes) {
    return causes.stream()
        .filter(cause -> !cause.equals(posterior.first()))
        .filter(cause -> tightening == null || !tightening.cures(cause))
        .map(this::whyNot)
        .toList();
  }

  private WhyNotNote whyNot(String cause) {
    WhyNot why =
        WhyNot.explain(
            posterior,
            cause,
            asks(List.of(cause, posterior.first())).stream().map(Ask::sign).toList(),
            this::answered,
            MOST_TURNS);
    return new WhyNotNote(
        cause,
        knowledge.catalog().nameOf(cause),
        Explaining.rounded(posterior.probability(cause)),
        knowledge.catalog().nameOf(why.first()),
        Explaining.rounded(10 * Math.log10(why.oddsGap())),
        Stream.concat(why.answers().stream(), why.reports().stream())
            .map(this::turn)
            .filter(changes -> tightening == null || !tightening.isAmong(changes))
            .toList());
  }

  private String name(String sign) {
    Report report = reports.get(sign);
    return report == null ? knowledge.catalog().nameOf(sign) : report.name();
  }

  /** A sign counts as any answer does; a finding or an outcome turned round keeps its trust. */
  private Observation answered(String sign, boolean present) {
    boolean answerable = knowledge.catalog().signs().containsKey(sign);
    double asReported =
        answerable ? present ? trust : trustInNo : reports.get(sign).observation().trust();
    return new Observation(sign, present, asReported);
  }

  private List<ChangeNote> turn(Turn turn) {
    return turn.changes().stream()
        .map(
            change ->
                new ChangeNote(
                    change.sign(),
                    name(change.sign()),
                    switch (change.kind()) {
                      case PRESENT, ABSENT -> "add";
                      case REMOVED -> "withdraw";
                      case REVERSED -> "reverse";
                    },
                    change.kind() == WhyNot.Kind.PRESENT))
        .toList();
  }
}
