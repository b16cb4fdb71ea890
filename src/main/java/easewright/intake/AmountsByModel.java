package easewright.intake;

import easewright.intake.Told.TrialRead;
import easewright.number.Amount;
import easewright.number.AmountRead;
import easewright.number.TextSpan;
import easewright.reading.LengthSaid;
import easewright.reading.LengthSaid.Counts;
import easewright.reading.TextPlace;
import easewright.reading.TrainedReading;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

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

  /** A change that nothing asks for is so much less likely. */
  private static final double UNASKED = 0.15;

  /** How such an amount was found. */
  private static final String ONLY_MEASURED = "measured";

  private static final double NEARLY = 0.05;

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

  /** A length that the text gives for a change. */
  private record Given(String change, double sure, AmountRead amount, TextSpan span) {
    /** Whether this amount is the other one, or half or twice as much: told of the same length. */
    boolean isOf(AmountRead other) {
      double ratio = other.mm() / amount.mm();
      return DoubleStream.of(0.25, 0.5, 1, 2, 4).anyMatch(one -> Math.abs(ratio - one) < NEARLY);
    }
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
    List<Given> given = new LengthsGiven(amounts, model, aimed).all();
    trials.replaceAll(one -> named(one, given, trials, model));
    Set<String> tried = trials.stream().map(TrialRead::adjustment).collect(Collectors.toSet());
    trials.replaceAll(one -> FAILED.contains(one.outcome()) ? one : measured(one, given, model));
    given.stream()
        .filter(one -> one.sure >= (aimed.test(one.change) ? MEASURED : WITHOUT_AIM))
        .filter(one -> model.settings().alike(one.change).stream().noneMatch(tried::contains))
        .filter(one -> !isAsked(one.span, post))
        .collect(
            Collectors.toMap(
                Given::change, one -> one, (one, two) -> one.sure >= two.sure ? one : two))
        .values()
        .stream()
        .sorted(Comparator.comparingInt(one -> one.span.from()))
        .map(one -> new TrialRead(one.change, one.amount, ONLY_MEASURED, null, one.span, one.sure))
        .forEach(trials::add);
  }

  /**
   * The trial of a length as a trial of the change that the model is surer this length is for: a
   * strap pinned shorter on the lower shoulder is no strap too long.
   */
  private static TrialRead named(
      TrialRead trial, List<Given> given, List<TrialRead> all, TrainedReading model) {
    return given.stream()
        .filter(one -> one.sure >= SURER && trial.span().covers(one.span))
        .filter(one -> !model.settings().alike(trial.adjustment()).contains(one.change))
        .filter(one -> all.stream().noneMatch(each -> each.adjustment().equals(one.change)))
        .max(Comparator.comparingDouble(Given::sure))
        .map(
            one ->
                new TrialRead(
                    one.change, one.amount, trial.how(), trial.outcome(), trial.span(), one.sure))
        .orElse(trial);
  }

  /** Where the numbers stand that may be lengths. */
  static List<TextPlace> places(List<Amount> numbers) {
    return numbers.stream()
        .filter(one -> one.unit() == null || one.isLength())
        .map(one -> new TextPlace(one.span().from(), one.span().to()))
        .toList();
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
        .filter(one -> alike.contains(one.change))
        .filter(one -> one.sure >= (trial.amount() == null ? TOLD : SURER))
        .filter(one -> trial.amount() == null || !one.isOf(trial.amount()))
        .max(Comparator.comparingDouble(Given::sure))
        .map(
            one ->
                new TrialRead(
                    trial.adjustment(),
                    one.amount,
                    trial.how(),
                    trial.outcome(),
                    trial.span(),
                    trial.confidence()))
        .orElse(trial);
  }

  /** The lengths of one text, and what each comes to. */
  private final class LengthsGiven {
    private final Map<Integer, Amount> byPlace = new HashMap<>();
    private final TrainedReading model;
    private final Predicate<String> aimed;

    LengthsGiven(List<Amount> amounts, TrainedReading model, Predicate<String> aimed) {
      amounts.forEach(one -> byPlace.put(one.span().from(), one));
      this.model = model;
      this.aimed = aimed;
    }

    /** In the order of the text; of two that are compared the later one. */
    List<Given> all() {
      List<Given> found = new ArrayList<>();
      LengthSaid before = null;
      for (LengthSaid said : model.lengths()) {
        Amount amount = byPlace.get(said.at().from());
        if (amount == null || said.ofAny() < TOLD) {
          continue;
        }
        if (!said.counts().isOfTwo()) {
          String change = likeliest(said::of);
          counted(amount, said.counts(), change)
              .ifPresent(one -> found.add(given(change, said::of, said.ofAny(), one, amount)));
        } else if (before == null) {
          before = said;
        } else {
          LengthSaid other = before;
          before = null;
          ToDoubleFunction<String> both = id -> Math.sqrt(said.of(id) * other.of(id));
          double any = Math.min(said.ofAny(), other.ofAny());
          difference(byPlace.get(other.at().from()), amount, said.counts())
              .ifPresent(one -> found.add(given(likeliest(both), both, any, one, amount)));
        }
      }
      return found;
    }

    private String likeliest(ToDoubleFunction<String> of) {
      return model.settings().amounts().stream()
          .filter(adjustments::containsKey)
          .max(Comparator.comparingDouble(id -> weighed(id, of)))
          .orElseThrow();
    }

    /** A change that nothing asks for leaves its share to the others. */
    private double weighed(String change, ToDoubleFunction<String> of) {
      return of.applyAsDouble(change) * (aimed.test(change) ? 1 : UNASKED);
    }

    private Given given(
        String change, ToDoubleFunction<String> of, double any, AmountRead one, Amount amount) {
      double all = model.settings().amounts().stream().mapToDouble(id -> weighed(id, of)).sum();
      double alike =
          model.settings().alike(change).stream().mapToDouble(id -> weighed(id, of)).sum();
      return new Given(change, any * alike / all, one, amount.span());
    }
  }

  /** What lies between two lengths, a bare number being in the unit of the other. */
  private Optional<AmountRead> difference(Amount one, Amount two, Counts counts) {
    String unit = one.unit() == null ? two.unit() : one.unit();
    if (unit == null) {
      return Optional.empty();
    }
    double apart = Math.abs(one.mm(unit) - two.mm(unit));
    double mm = counts == Counts.TWICE_PAIR ? apart / 2 : apart;
    return mm > 0 && mm <= mostMm
        ? Optional.of(new AmountRead(Math.round(mm) + " mm", null, 1))
        : Optional.empty();
  }

  /** As the change counts it: in all, or that of one side. */
  private Optional<AmountRead> counted(Amount amount, Counts counts, String change) {
    if (!amount.isLength() || amount.mm("mm") > mostMm || counts == Counts.OTHER) {
      return Optional.empty();
    }
    Amount all =
        switch (counts) {
          case HALF -> amount.doubled();
          case QUARTER -> amount.doubled().doubled();
          case TWICE -> adjustments.get(change).perSide() ? amount.halved() : amount;
          default -> amount;
        };
    return Optional.of(AmountRead.of(all, "mm", 1));
  }
}
