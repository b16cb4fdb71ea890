package easewright.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * A change that a text tells of as tried or made, with what it did.
 *
 * @param change its id
 * @param sure how probably the text tells of this change, or of one that comes to the same
 * @param outcome "right", "better", "same" or "worse"
 * @param told the sentence that tells of it
 * @param last the last sentence that goes on about it; may be the same
 */
public record TrialSaid(
    String change, double sure, String outcome, SentenceSaid told, SentenceSaid last) {
  /** From here on a sentence tells that something was done. */
  private static final double DONE = 0.5;

  /** From here on a sentence tells which change it was. */
  private static final double SURE = 0.5;

  /** From here on its sentences together tell what a change did. */
  private static final double SEEN = 0.5;

  /** From here on a sentence goes on about what a change did. */
  private static final double GOES_ON = 0.4;

  /** As many sentences after a trial may tell what it did. */
  private static final int MOST_SENTENCES = 3;

  private static final String SAME = "same";

  /**
   * The trials of a text, each of them with an outcome. The bounds were chosen on posts in view.
   *
   * @param counts whether a sentence may tell of a trial
   */
  public static List<TrialSaid> in(TrainedReading text, Predicate<SentenceSaid> counts) {
    List<SentenceSaid> all = text.sentences().stream().filter(one -> one.change() != null).toList();
    List<List<String>> alike = text.settings().alike();
    List<TrialSaid> found = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).change().done() >= DONE && counts.test(all.get(i))) {
        List<SentenceSaid> here = all.subList(i, lastOf(i, all, alike) + 1);
        Optional<TrialSaid> trial = of(here, alike);
        trial.ifPresent(found::add);
        i += trial.isPresent() ? here.size() - 1 : 0;
      }
    }
    return found;
  }

  private static Optional<TrialSaid> of(List<SentenceSaid> here, List<List<String>> alike) {
    Map<String, Double> changes = new HashMap<>();
    List<ChangeSaid> telling =
        here.stream().map(SentenceSaid::change).filter(one -> one.done() >= DONE).toList();
    telling.forEach(
        one ->
            one.changes().forEach((id, p) -> changes.merge(id, p / telling.size(), Double::sum)));
    String change = likeliest(changes);
    double sure = withAlike(change, changes, alike);
    return sure < SURE
        ? Optional.empty()
        : outcome(here)
            .map(did -> new TrialSaid(change, sure, did, here.get(0), here.get(here.size() - 1)));
  }

  private static String likeliest(Map<String, Double> changes) {
    return changes.entrySet().stream()
        .max(Map.Entry.<String, Double>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
        .orElseThrow()
        .getKey();
  }

  private static double withAlike(
      String change, Map<String, Double> changes, List<List<String>> alike) {
    return alike.stream()
        .filter(group -> group.contains(change))
        .findFirst()
        .orElse(List.of(change))
        .stream()
        .mapToDouble(one -> changes.getOrDefault(one, 0.0))
        .sum();
  }

  /** The last sentence that goes on about a trial: of the same change, or of what it did. */
  private static int lastOf(int trial, List<SentenceSaid> all, List<List<String>> alike) {
    String change = likeliest(all.get(trial).change().changes());
    int last = trial;
    while (last + 1 < all.size()
        && last < trial + MOST_SENTENCES
        && goesOn(all.get(last + 1).change(), change, alike)) {
      last++;
    }
    return last;
  }

  private static boolean goesOn(ChangeSaid next, String change, List<List<String>> alike) {
    if (next.done() < DONE) {
      return next.undone() >= DONE
          || ChangeSaid.OUTCOMES.stream().anyMatch(one -> next.outcome(one) >= GOES_ON);
    }
    Map<String, Double> changes = next.changes();
    return withAlike(change, changes, alike) >= changes.get(likeliest(changes));
  }

  /** Each sentence may tell it; a change that was taken back for no reason told did no good. */
  private static Optional<String> outcome(List<SentenceSaid> sentences) {
    Map<String, Double> missed = new HashMap<>();
    ChangeSaid.OUTCOMES.forEach(one -> missed.put(one, 1.0));
    sentences.forEach(
        one -> missed.replaceAll((what, left) -> left * (1 - one.change().outcome(what))));
    boolean undone = sentences.stream().anyMatch(one -> one.change().undone() >= DONE);
    return missed.entrySet().stream()
        .min(
            Comparator.comparing(Map.Entry<String, Double>::getValue)
                .thenComparing(Map.Entry::getKey))
        .filter(one -> 1 - one.getValue() >= SEEN)
        .map(Map.Entry::getKey)
        .or(() -> undone ? Optional.of(SAME) : Optional.empty());
  }
}
