package easewright.intake;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Tells the sign a clause is most like when no phrase of the book stands in it whole. Every word
 * speaks for the signs in whose phrases it is commoner than elsewhere, by the logarithm of that
 * ratio (naive Bayes, Laplace smoothing); one sign must lead clearly.
 */
final class Likeness {
  private static final double SMOOTHING = 10;

  private final Lexicon lexicon;
  private final Map<String, Map<String, Double>> weights = new HashMap<>();
  private final Map<String, List<Saying>> sayings = new LinkedHashMap<>();
  private final Map<String, Double> usual = new HashMap<>();
  private final Tuning tuning;

  /**
   * How sure to be.
   *
   * @param against the most one word can speak against a sign, nats
   * @param least the least all words must speak for it, nats
   * @param lead the least it must be ahead of any other, nats
   * @param usual the head start of what wearers report most, nats
   */
  record Tuning(double against, double least, double lead, double usual) {}

  Likeness(Collection<Saying> all, Collection<String> usualSigns, Lexicon lexicon, Tuning tuning) {
    this.lexicon = lexicon;
    this.tuning = tuning;
    all.forEach(one -> sayings.computeIfAbsent(one.of(), any -> new ArrayList<>()).add(one));
    usualSigns.forEach(sign -> usual.put(sign, tuning.usual()));
    Map<String, Double> share = new HashMap<>();
    all.forEach(
        one -> one.elements().forEach(word -> share.merge(word, 1.0 / all.size(), Double::sum)));
    sayings.forEach(
        (sign, own) -> {
          Map<String, Integer> counts = new HashMap<>();
          own.forEach(one -> one.elements().forEach(word -> counts.merge(word, 1, Integer::sum)));
          counts.forEach(
              (word, count) -> {
                double expected = share.get(word);
                double here = (count + SMOOTHING * expected) / (own.size() + SMOOTHING);
                weights
                    .computeIfAbsent(word, any -> new HashMap<>())
                    .put(sign, Math.log(here / expected));
              });
        });
  }

  /** The sign each clause is most like, where one leads. */
  List<Match> in(Post post, Map<String, List<Mention>> said) {
    List<Match> found = new ArrayList<>();
    Map<Integer, List<Mention>> byClause = new LinkedHashMap<>();
    said.values().stream()
        .flatMap(List::stream)
        .filter(one -> weights.containsKey(one.name()))
        .sorted(Comparator.comparingInt(Mention::first))
        .forEach(
            one ->
                byClause
                    .computeIfAbsent(post.clause()[one.first()], any -> new ArrayList<>())
                    .add(one));
    byClause.values().forEach(clause -> likeliest(clause, post).ifPresent(found::add));
    return found;
  }

  private java.util.Optional<Match> likeliest(List<Mention> clause, Post post) {
    Map<String, Double> scores = scores(names(clause));
    String best = null;
    double first = Double.NEGATIVE_INFINITY;
    double second = Double.NEGATIVE_INFINITY;
    for (Map.Entry<String, Double> one : scores.entrySet()) {
      if (one.getValue() > first) {
        second = first;
        first = one.getValue();
        best = one.getKey();
      } else {
        second = Math.max(second, one.getValue());
      }
    }
    if (best == null || first < tuning.least() || first - Math.max(0, second) < tuning.lead()) {
      return java.util.Optional.empty();
    }
    String sign = best;
    List<Mention> speaking =
        clause.stream()
            .filter(one -> weights.get(one.name()).getOrDefault(sign, -1.0) > 0.3)
            .toList();
    List<Mention> what =
        speaking.stream()
            .filter(one -> !lexicon.isPart(one.name()) && !lexicon.isPlace(one.name()))
            .toList();
    if (what.isEmpty() || speaking.size() < 2) {
      return java.util.Optional.empty();
    }
    Saying nearest = nearest(sign, names(speaking));
    double confidence = 0.5 + 0.4 * (1 - Math.exp(-(first - Math.max(0, second)) / 3));
    return java.util.Optional.of(new Match(nearest, speaking, what, first, confidence));
  }

  /** How strongly these words speak for each sign, nats. */
  Map<String, Double> scores(Set<String> words) {
    Map<String, Double> scores = new HashMap<>();
    for (String word : words) {
      for (String sign : weights.getOrDefault(word, Map.of()).keySet()) {
        scores.putIfAbsent(sign, usual.getOrDefault(sign, 0.0));
      }
    }
    scores.replaceAll(
        (sign, start) -> {
          double sum = start;
          for (String word : words) {
            Map<String, Double> ofWord = weights.get(word);
            if (ofWord != null) {
              sum += Math.max(-tuning.against(), ofWord.getOrDefault(sign, -tuning.against()));
            }
          }
          return sum;
        });
    return scores;
  }

  static Set<String> names(List<Mention> mentions) {
    Set<String> names = new HashSet<>();
    mentions.forEach(one -> names.add(one.name()));
    return names;
  }

  private Saying nearest(String sign, Set<String> words) {
    return sayings.get(sign).stream()
        .max(
            Comparator.comparingDouble(
                one -> {
                  long shared = one.elements().stream().filter(words::contains).count();
                  return shared - 0.5 * (one.elements().size() - shared);
                }))
        .orElseThrow();
  }
}
