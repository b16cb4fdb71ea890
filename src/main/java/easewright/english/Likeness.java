package easewright.english;

import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Tells the signs that words are most like when no phrase of the book stands in them whole. Every
 * word speaks for the signs in whose phrases it is commoner than elsewhere, by the logarithm of
 * that ratio (naive Bayes, smoothed). Too unsure to count: for asking only.
 */
public final class Likeness {
  private static final double SMOOTHING = 10;

  /** The most one word can speak against a sign, and the least all must speak for it, nats. */
  private static final double AGAINST = 0.8;

  private static final double LEAST = 3;
  private static final double USUAL = 0.7;

  private final Map<String, Map<String, Double>> weights = new HashMap<>();
  private final Set<String> usual;

  /**
   * @param phrases by sign its phrases, each as the names of what must be said for it
   * @param usual signs that get a head start, since wearers report them most
   */
  public Likeness(Map<String, List<List<String>>> phrases, Collection<String> usual) {
    this.usual = Set.copyOf(usual);
    long all = phrases.values().stream().mapToLong(List::size).sum();
    Map<String, Double> share = new HashMap<>();
    phrases.values().stream()
        .flatMap(List::stream)
        .flatMap(List::stream)
        .forEach(word -> share.merge(word, 1.0 / all, Double::sum));
    phrases.forEach((sign, own) -> weigh(sign, own, share));
  }

  private void weigh(String sign, List<List<String>> own, Map<String, Double> share) {
    Map<String, Integer> counts = new HashMap<>();
    own.forEach(one -> one.forEach(word -> counts.merge(word, 1, Integer::sum)));
    counts.forEach(
        (word, count) -> {
          double expected = share.get(word);
          double here = (count + SMOOTHING * expected) / (own.size() + SMOOTHING);
          weights
              .computeIfAbsent(word, any -> new HashMap<>())
              .put(sign, Math.log(here / expected));
        });
  }

  /** The signs these words are most like, likeliest first. */
  public List<String> likest(List<Mention> said, int most) {
    Set<String> words = new HashSet<>();
    said.forEach(one -> words.add(one.name()));
    Map<String, Double> scores = new HashMap<>();
    for (String word : words) {
      weights.getOrDefault(word, Map.of()).keySet().forEach(sign -> scores.put(sign, 0.0));
    }
    scores.replaceAll((sign, none) -> score(sign, words));
    scores.values().removeIf(score -> score < LEAST);
    return likeliest(scores, most);
  }

  /**
   * The signs in whose phrases one of these words stands, likeliest first: for words that say what
   * is seen, and not where.
   */
  public List<String> having(List<Mention> ideas, int most) {
    Map<String, Double> best = new HashMap<>();
    for (Mention idea : ideas) {
      weights
          .getOrDefault(idea.name(), Map.of())
          .forEach(
              (sign, weight) ->
                  best.merge(sign, weight + (usual.contains(sign) ? USUAL : 0), Math::max));
    }
    best.values().removeIf(score -> score <= 0);
    return likeliest(best, most);
  }

  private static List<String> likeliest(Map<String, Double> scores, int most) {
    return scores.entrySet().stream()
        .sorted(
            Map.Entry.<String, Double>comparingByValue(Comparator.reverseOrder())
                .thenComparing(Map.Entry.comparingByKey()))
        .limit(most)
        .map(Map.Entry::getKey)
        .toList();
  }

  private double score(String sign, Set<String> words) {
    double sum = usual.contains(sign) ? USUAL : 0;
    for (String word : words) {
      Map<String, Double> ofWord = weights.get(word);
      if (ofWord != null) {
        sum += Math.max(-AGAINST, ofWord.getOrDefault(sign, -AGAINST));
      }
    }
    return sum;
  }
}
