package easewright.intake;

import easewright.intake.LengthsGiven.Given;
import easewright.intake.Told.TrialRead;
import easewright.number.Amount;
import easewright.number.TextSpan;
import easewright.reading.OutcomesSaid;
import easewright.reading.TextPlace;
import easewright.reading.TrainedReading;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.RuleBookSource;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Amounts of changes, as the trained model reads them from the lengths of a text: of trials whose
 * amount the words did not find, and of changes that were only measured.
 */
final class AmountsByModel {
  /** So sure the model must be to give a trial an amount that the words did not find. */
  private static final double TOLD = 0.4;

  /** So sure it must be to change the amount that the words found. */
  private static final double SURER = 0.7;

  /** So sure it must be where no trial is told. */
  private static final double MEASURED = 0.6;

  /** So sure it must be of a change that nothing she complains of asks for. */
  private static final double WITHOUT_AIM = 0.9;

  /** How such an amount was found. */
  private static final String ONLY_MEASURED = "measured";

  private static final String HELD = "held";
  private static final String RIGHT = "right";
  private static final List<String> FAILED = Arrays.asList("same", "worse");

  private final Map<String, AdjustmentEntry> adjustments;
  private final double mostMm;

  /**
   * @param mostMm no change is larger
   */
  AmountsByModel(RuleBookSource book, double mostMm) {
    this.adjustments = book.catalog().adjustments();
    this.mostMm = mostMm;
  }

  /**
   * Adds the amounts to the trials found, and what was only measured as a trial without an outcome.
   *
   * @param aimed whether something that the text complains of asks for a change
   */
  void add(
      Post post,
      List<Amount> amounts,
      TrainedReading model,
      Predicate<String> aimed,
      List<TrialRead> trials) {
    List<Given> given = new LengthsGiven(amounts, model, aimed, adjustments, mostMm).all();
    trials.replaceAll(one -> named(one, given, trials, model));
    Set<String> tried = trials.stream().map(TrialRead::adjustment).collect(Collectors.toSet());
    trials.replaceAll(one -> FAILED.contains(one.outcome()) ? one : measured(one, given, model));
    given.stream()
        .filter(one -> one.sure() >= (aimed.test(one.change()) ? MEASURED : WITHOUT_AIM))
        .filter(one -> model.settings().alike(one.change()).stream().noneMatch(tried::contains))
        .filter(one -> !isAsked(one.span(), post))
        .collect(
            Collectors.toMap(
                Given::change, one -> one, (one, two) -> one.sure() >= two.sure() ? one : two))
        .values()
        .stream()
        .sorted(Comparator.comparingInt(one -> one.span().from()))
        .map(one -> trial(one, new OutcomesSaid(model)))
        .forEach(trials::add);
  }

  /**
   * The trial of a length as a trial of the change that the model is surer this length is for: a
   * strap pinned shorter on the lower shoulder is no strap too long.
   */
  private static TrialRead named(
      TrialRead trial, List<Given> given, List<TrialRead> all, TrainedReading model) {
    return given.stream()
        .filter(one -> one.sure() >= SURER && trial.span().covers(one.span()))
        .filter(one -> !model.settings().alike(trial.adjustment()).contains(one.change()))
        .filter(one -> all.stream().noneMatch(each -> each.adjustment().equals(one.change())))
        .max(Comparator.comparingDouble(Given::sure))
        .map(
            one ->
                new TrialRead(
                    one.change(),
                    one.amount(),
                    trial.how(),
                    trial.outcome(),
                    trial.span(),
                    one.sure()))
        .orElse(trial);
  }

  /** Where the numbers stand that may be lengths. */
  static List<TextPlace> places(List<Amount> numbers) {
    return numbers.stream()
        .filter(one -> one.unit() == null || one.isLength())
        .map(one -> new TextPlace(one.span().from(), one.span().to()))
        .toList();
  }

  /** A length with which the fault was gone was held there; any other was only measured. */
  private static TrialRead trial(Given given, OutcomesSaid outcomes) {
    boolean right = RIGHT.equals(outcomes.of(given.span().from(), given.span().to(), null));
    return new TrialRead(
        given.change(),
        given.amount(),
        right ? HELD : ONLY_MEASURED,
        right ? RIGHT : null,
        given.span(),
        given.sure());
  }

  /** "Should I cut 12 mm off?": no measurement. */
  private static boolean isAsked(TextSpan length, Post post) {
    int last = post.sentenceOf(Whereabouts.wordAt(post, length.to() - 1)).last();
    int end = post.span(last, last).to();
    return end < post.text().length() && post.text().charAt(end) == '?';
  }

  private TrialRead measured(TrialRead trial, List<Given> given, TrainedReading model) {
    List<String> alike = model.settings().alike(trial.adjustment());
    return given.stream()
        .filter(one -> alike.contains(one.change()))
        .filter(one -> one.sure() >= (trial.amount() == null ? TOLD : SURER))
        .filter(one -> trial.amount() == null || !one.isOf(trial.amount()))
        .max(Comparator.comparingDouble(Given::sure))
        .map(
            one ->
                new TrialRead(
                    trial.adjustment(),
                    one.amount(),
                    trial.how(),
                    trial.outcome(),
                    trial.span(),
                    trial.confidence()))
        .orElse(trial);
  }
}
