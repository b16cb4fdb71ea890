package easewright.inference;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The same sums written out from the definitions, with sets and maps and no cleverness. */
final class PlainEvaluator {
  private final Map<String, Double> priors;
  private final Map<String, Double> leaks;
  private final List<Link> links;
  private final int mostAtOnce;

  PlainEvaluator(
      Map<String, Double> priors, Map<String, Double> leaks, List<Link> links, int mostAtOnce) {
    this.priors = priors;
    this.leaks = leaks;
    this.links = links;
    this.mostAtOnce = mostAtOnce;
  }

  record Weighed(List<String> causes, double probability) {}

  List<Weighed> posterior(List<Observation> observations) {
    var joint = new ArrayList<Weighed>();
    double total = 0;
    for (List<String> causes : subsets(List.copyOf(priors.keySet()))) {
      double p = 1;
      for (var prior : priors.entrySet()) {
        p *= causes.contains(prior.getKey()) ? prior.getValue() : 1 - prior.getValue();
      }
      for (Observation seen : observations) {
        p *= report(seen, causes);
      }
      joint.add(new Weighed(causes, p));
      total += p;
    }
    double sum = total;
    return joint.stream().map(w -> new Weighed(w.causes(), w.probability() / sum)).toList();
  }

  double report(Observation seen, List<String> causes) {
    double present = present(seen.sign(), causes);
    double asReported = seen.present() ? present : 1 - present;
    return seen.trust() * asReported + (1 - seen.trust()) * (1 - asReported);
  }

  double present(String sign, List<String> causes) {
    double absent = 1 - leaks.get(sign);
    for (Link link : links) {
      if (link.sign().equals(sign) && causes.contains(link.cause())) {
        absent *= 1 - link.strength();
      }
    }
    return 1 - absent;
  }

  static double marginal(List<Weighed> posterior, String cause) {
    return posterior.stream()
        .filter(w -> w.causes().contains(cause))
        .mapToDouble(Weighed::probability)
        .sum();
  }

  static double entropy(List<Weighed> posterior) {
    return posterior.stream()
        .mapToDouble(Weighed::probability)
        .filter(p -> p > 0)
        .map(p -> -p * Math.log(p) / Math.log(2))
        .sum();
  }

  /** Expected drop in entropy by its definition: before, less the mean over both answers. */
  double bits(List<Observation> observations, String sign, double trust) {
    var before = posterior(observations);
    double expected = 0;
    for (boolean present : new boolean[] {true, false}) {
      var answer = new Observation(sign, present, trust);
      double p =
          before.stream().mapToDouble(w -> w.probability() * report(answer, w.causes())).sum();
      var more = new ArrayList<>(observations);
      more.add(answer);
      expected += p > 0 ? p * entropy(posterior(more)) : 0;
    }
    return entropy(before) - expected;
  }

  private List<List<String>> subsets(List<String> causes) {
    var subsets = new ArrayList<List<String>>();
    for (int mask = 0; mask < 1 << causes.size(); mask++) {
      if (Integer.bitCount(mask) <= mostAtOnce) {
        var subset = new ArrayList<String>();
        for (int c = 0; c < causes.size(); c++) {
          if ((mask >> c & 1) == 1) {
            subset.add(causes.get(c));
          }
        }
        subsets.add(subset);
      }
    }
    return subsets;
  }
}
