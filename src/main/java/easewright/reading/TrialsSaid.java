package easewright.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import java.util.function.ToDoubleBiFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * Puts together what the sentences of a text tell of changes and of what they did. The bounds were
 * chosen on posts in view.
 */
public final class TrialsSaid {
  /** From here on a sentence tells that something was done. */
  static final double DONE = 0.5;

  /** From here on a sentence tells which change it was. */
  private static final double SURE = 0.5;

  /** So sure it must be as well, whatever the text complains of. */
  private static final double PLAIN = 0.44;

  /** A change that a sentence names is so much likelier. */
  private static final double NAMED = 5;

  /** From here on its sentences together tell what a change did. */
  private static final double SEEN = 0.5;

  /** From here on the sentences of the change itself tell what it did. */
  private static final double SEEN_IN_IT = 0.3;

  /** From here on a sentence goes on about what a change did. */
  private static final double GOES_ON = 0.4;

  /** As many sentences after a trial may tell what it did. */
  private static final int MOST_SENTENCES = 3;

  private static final String SAME = "same";

  private final List<SentenceSaid> all;
  private final ReaderSettings settings;
  private final ToDoubleFunction<String> weight;
  private final BiPredicate<SentenceSaid, String> named;

  /**
   * @param text as the model reads it
   * @param weight how likely a change is, by its id, for what the text complains of; one for all
   *     changes where that is not known
   * @param named whether a sentence names a change in so many words
   */
  public TrialsSaid(
      TrainedReading text,
      ToDoubleFunction<String> weight,
      BiPredicate<SentenceSaid, String> named) {
    this.named = named;
    this.all = text.sentences().stream().filter(one -> one.change() != null).toList();
    this.settings = text.settings();
    this.weight = weight;
  }

  /**
   * The trials of the text in order, each of them with an outcome.
   *
   * @param counts whether a sentence may tell of a trial
   */
  public List<TrialSaid> in(Predicate<SentenceSaid> counts) {
    List<TrialSaid> found = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).change().done() >= DONE && counts.test(all.get(i))) {
        List<SentenceSaid> here = all.subList(i, lastOf(i) + 1);
        of(here).ifPresent(found::add);
        i += here.size() - 1; // where it is not plain, no part of it is plainer
      }
    }
    return found;
  }

  private Optional<TrialSaid> of(List<SentenceSaid> here) {
    List<SentenceSaid> telling = here.stream().filter(one -> one.change().done() >= DONE).toList();
    Map<String, Double> changes = changes(telling, this::weight);
    String change = likeliest(changes);
    double sure = withAlike(change, changes);
    boolean plain =
        telling.stream().anyMatch(one -> named.test(one, change))
            || withAlike(change, changes(telling, (one, any) -> 1)) >= PLAIN;
    return sure < SURE || !plain
        ? Optional.empty()
        : outcome(here)
            .map(did -> new TrialSaid(change, sure, did, here.get(0), here.get(here.size() - 1)));
  }

  private double weight(SentenceSaid sentence, String change) {
    return weight.applyAsDouble(change) * (named.test(sentence, change) ? NAMED : 1);
  }

  /** The mean of the sentences, in which unlikely changes leave their share to the others. */
  private static Map<String, Double> changes(
      List<SentenceSaid> telling, ToDoubleBiFunction<SentenceSaid, String> weight) {
    Map<String, Double> mean = new HashMap<>();
    for (SentenceSaid one : telling) {
      Map<String, Double> changes = one.change().changes();
      double plain = sum(changes);
      changes.replaceAll((id, p) -> p * weight.applyAsDouble(one, id));
      double share = plain / sum(changes) / telling.size();
      changes.forEach((id, p) -> mean.merge(id, p * share, Double::sum));
    }
    return mean;
  }

  private static double sum(Map<String, Double> changes) {
    return changes.values().stream().mapToDouble(one -> one).sum();
  }

  private static String likeliest(Map<String, Double> changes) {
    return changes.entrySet().stream()
        .max(Map.Entry.<String, Double>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
        .orElseThrow()
        .getKey();
  }

  private double withAlike(String change, Map<String, Double> changes) {
    return settings.alike(change).stream().mapToDouble(one -> changes.getOrDefault(one, 0.0)).sum();
  }

  /** The last sentence that goes on about a trial: of the same change, or of what it did. */
  private int lastOf(int trial) {
    String change = likeliest(changes(List.of(all.get(trial)), this::weight));
    int last = trial;
    while (last + 1 < all.size()
        && last < trial + MOST_SENTENCES
        && (goesOn(all.get(last + 1), change) || isOpen(trial, last))) {
      last++;
    }
    return last;
  }

  /**
   * "I cut them and joined them with ribbon. With 2 cm each it lay flat": one trial, told twice.
   */
  private boolean isOpen(int trial, int last) {
    return all.get(last + 1).change().done() >= DONE
        && outcome(all.subList(trial, last + 1).stream(), SEEN_IN_IT).isEmpty();
  }

  private boolean goesOn(SentenceSaid sentence, String change) {
    ChangeSaid next = sentence.change();
    if (next.done() < DONE) {
      return next.undone() >= DONE
          || ChangeSaid.OUTCOMES.stream().anyMatch(one -> next.outcome(one) >= GOES_ON);
    }
    Map<String, Double> changes = changes(List.of(sentence), this::weight);
    return withAlike(change, changes) >= changes.get(likeliest(changes));
  }

  /**
   * What the sentences of the change itself tell, else those after it; a change that was taken back
   * for no reason told did no good.
   */
  private static Optional<String> outcome(List<SentenceSaid> sentences) {
    boolean undone = sentences.stream().anyMatch(one -> one.change().undone() >= DONE);
    return outcome(sentences.stream().filter(one -> one.change().done() >= DONE), SEEN_IN_IT)
        .or(() -> outcome(sentences.stream(), SEEN))
        .or(() -> undone ? Optional.of(SAME) : Optional.empty());
  }

  /** The likeliest outcome; each sentence may tell it. */
  private static Optional<String> outcome(Stream<SentenceSaid> sentences, double least) {
    Map<String, Double> missed = new HashMap<>();
    ChangeSaid.OUTCOMES.forEach(one -> missed.put(one, 1.0));
    sentences.forEach(
        one -> missed.replaceAll((what, left) -> left * (1 - one.change().outcome(what))));
    return missed.entrySet().stream()
        .min(
            Comparator.comparing(Map.Entry<String, Double>::getValue)
                .thenComparing(Map.Entry::getKey))
        .filter(one -> 1 - one.getValue() >= least)
        .map(Map.Entry::getKey);
  }
}
