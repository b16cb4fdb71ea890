package easewright.diagnosis;

import static java.util.stream.Collectors.toMap;

import easewright.diagnosis.Answer.CauseChance;
import easewright.diagnosis.Answer.QuestionNote;
import easewright.diagnosis.Answer.ShiftNote;
import easewright.diagnosis.Answer.WhyNotNote;
import easewright.fitting.Fitting;
import easewright.fitting.Trial;
import easewright.inference.CauseProbability;
import easewright.inference.Posterior;
import easewright.inference.Question;
import easewright.inference.Question.Ask;
import easewright.inference.Question.Outlook;
import easewright.inference.Questions;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Conclusions;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Finds what is most worth asking next. */
final class Asking {
  private static final int MOST_QUESTIONS = 5;

  /** Among so many of the best a deciding test is looked for. */
  private static final int MOST_RANKED = 15;

  /** Less than this does not show in whole percentages. */
  private static final double LEAST_SHIFT = 0.01;

  private final Knowledge knowledge;
  private final Posterior posterior;
  private final Map<String, Report> reports;
  private final Photos photos;
  private final Tightening tightening;
  private final Set<String> known;
  private final Set<String> notToTell;
  private final Fitting fitting;

  /**
   * @param tightening what must not be spoken of; null where everything may be
   * @param known ids of the figures and findings that numbers sent already tell
   */
  Asking(
      Knowledge knowledge,
      Posterior posterior,
      List<Report> reports,
      Fitting fitting,
      Tightening tightening,
      Set<String> known) {
    this.tightening = tightening;
    this.known = new HashSet<>(known);
    this.known.addAll(fitting.onOneSide());
    this.knowledge = knowledge;
    this.posterior = posterior;
    this.reports = reports.stream().collect(toMap(r -> r.observation().sign(), r -> r));
    this.photos = new Photos(knowledge, fitting);
    this.notToTell = Set.copyOf(fitting.couldNotTell());
    this.fitting = fitting;
  }

  /**
   * What to ask, the most worthwhile first, but before it the trade's own test between the two
   * likeliest causes, or else between the likeliest and others, if that is worth about as much.
   *
   * @param clear whether one cause is clear, so that only what may still tell much is asked
   * @param doubted a reading to be confirmed before anything else is asked
   */
  List<QuestionNote> questions(boolean clear, Optional<DoubtedReading> doubted) {
    double least = clear ? knowledge.parameter("least-worth-asking") : 0;
    List<Question> ranked =
        Questions.rank(posterior, asks(inPlay()), MOST_RANKED).stream()
            .filter(question -> question.bits() >= least)
            .toList();
    Stream<QuestionNote> asked =
        Stream.concat(deciding(ranked).stream(), ranked.stream())
            .distinct()
            .map(question -> note(question, ask(question), null));
    return Stream.concat(doubted.map(one -> one.question(this)).stream(), asked)
        .limit(MOST_QUESTIONS)
        .toList();
  }

  private Optional<Question> deciding(List<Question> ranked) {
    List<String> likeliest = posterior.causes(2).stream().map(CauseProbability::cause).toList();
    return deciding(ranked, likeliest).or(() -> deciding(ranked, likeliest.subList(0, 1)));
  }

  private Optional<Question> deciding(List<Question> ranked, List<String> causes) {
    double within = knowledge.parameter("deciding-test-within");
    return ranked.stream()
        .filter(question -> question.worth() * within >= ranked.get(0).worth())
        .filter(
            question -> {
              List<String> decides = knowledge.catalog().signs().get(question.sign()).decides();
              return decides != null && decides.containsAll(causes);
            })
        .findFirst();
  }

  private List<String> inPlay() {
    return posterior.causesFrom(knowledge.parameter("ask-about")).stream()
        .map(CauseProbability::cause)
        .toList();
  }

  /** The signs that may be asked about and bear on one of these causes. */
  List<String> signs(Collection<String> causes) {
    return asks(causes).stream().map(Ask::sign).toList();
  }

  /** Answers "why not this cause?". */
  List<WhyNotNote> whyNot(List<String> causes) {
    return new Contrast(knowledge, posterior, reports, this, tightening).notes(causes);
  }

  /** Signs neither reported nor asked in vain that bear on one of these causes, by name. */
  private Collection<Ask> asks(Collection<String> causes) {
    TreeMap<String, Ask> asks = new TreeMap<>();
    for (String cause : causes) {
      for (Ask ask : knowledge.signs().asks(cause)) {
        if (!asks.containsKey(ask.sign()) && isOpen(ask.sign())) {
          asks.put(ask.sign(), ask);
        }
      }
    }
    return asks.values();
  }

  private boolean isOpen(String sign) {
    return !reports.containsKey(sign)
        && !notToTell.contains(sign)
        && !isKnown(sign)
        && !isTold(sign);
  }

  /** Whether a number that was sent already answers it. */
  private boolean isKnown(String sign) {
    List<String> answeredBy = knowledge.catalog().signs().get(sign).answeredBy();
    return answeredBy != null && answeredBy.stream().anyMatch(known::contains);
  }

  /**
   * Whether she said it in another way: her own trial was that test, or all is well where it would
   * be seen.
   */
  private boolean isTold(String sign) {
    List<String> proves = knowledge.catalog().signs().get(sign).proves();
    boolean tried =
        proves != null
            && fitting.trials().stream().map(Trial::adjustment).anyMatch(proves::contains);
    return tried
        || !fitting.fine().isEmpty() && fitting.fine().containsAll(knowledge.signs().areas(sign));
  }

  private String ask(Question question) {
    return knowledge.catalog().signs().get(question.sign()).ask();
  }

  /**
   * A question and what its replies would change.
   *
   * @param ask in words
   * @param confirms true where it asks whether a text was read right, else null
   */
  QuestionNote note(Question question, String ask, Boolean confirms) {
    SignEntry sign = knowledge.catalog().signs().get(question.sign());
    Outlook yes = question.yes();
    Outlook no = question.no();
    return new QuestionNote(
        sign.id(),
        ask,
        sign.check(),
        sign.effort(),
        Explaining.rounded(question.bits()),
        Explaining.rounded(yes.probability()),
        chances(foretold(yes.causes())),
        chances(foretold(no.causes())),
        shift(foretold(yes.causes())),
        shift(foretold(no.causes())),
        photos.of(sign).orElse(null),
        confirms);
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

  /** What numbers that were sent already tell. */
  static Set<String> known(FittingNumbers numbers, Conclusions said) {
    Set<String> known = new HashSet<>(numbers.figures().keySet());
    said.judged().forEach(judged -> known.add(judged.finding()));
    return known;
  }
}
