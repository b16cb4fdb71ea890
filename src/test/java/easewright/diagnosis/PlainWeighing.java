package easewright.diagnosis;

import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.rulebook.Catalog;
import easewright.rulebook.Conclusions;
import easewright.rulebook.Conclusions.Brought;
import easewright.rulebook.Conclusions.Cures;
import easewright.rulebook.Conclusions.Judged;
import easewright.rulebook.Conclusions.Shows;
import easewright.rulebook.Conclusions.Worsens;
import easewright.rulebook.Parameter;
import easewright.rulebook.RuleText;
import easewright.rulebook.facts.Figure;
import easewright.rulebook.facts.Finding;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * The weighing written out anew from its definition, with maps and loops: a leaky noisy-OR network
 * (Pearl 1988, from memory; formula in Jaakkola and Jordan 1999, JAIR 10), summed over nothing,
 * each cause and each pair. Shares nothing with the code it checks but what the rules said.
 */
final class PlainWeighing {
  /** Relative difference below which two weights differ by rounding only. */
  private static final double SAME = 1e-9;

  /** One thing observed. */
  record Seen(String sign, boolean present, double trust, double leakTimes) {
    Seen(String sign, boolean present, double trust) {
      this(sign, present, trust, 1);
    }
  }

  private final Map<String, Parameter> parameters = Answering.BOOK.source().parameters();
  private final List<String> causes;
  private final double[] odds;
  private final Map<String, Double> leaks = new TreeMap<>();
  private final Map<String, double[]> general = new TreeMap<>();

  PlainWeighing() {
    Catalog catalog = Answering.BOOK.catalog();
    causes = List.copyOf(catalog.causes().keySet());
    odds = new double[causes.size()];
    for (int c = 0; c < odds.length; c++) {
      double prior = number(catalog.causes().get(causes.get(c)).prior());
      odds[c] = prior / (1 - prior);
    }
    double scale = scale(odds, number("nothing-wrong"));
    for (int c = 0; c < odds.length; c++) {
      odds[c] *= scale;
    }
    catalog.signs().values().forEach(s -> leaks.put(s.id(), leak(s.withoutFault())));
    catalog.findings().values().forEach(f -> leaks.put(f.id(), leak(f.withoutFault())));
    for (String adjustment : catalog.adjustments().keySet()) {
      leaks.put("helped:" + adjustment, number("helped-by-chance"));
      leaks.put("worse:" + adjustment, number("worse-by-chance"));
    }
    catalog.practice().areas().forEach(a -> leaks.put("amiss:" + a.id(), leak("sometimes")));
    var links = links(Answering.BOOK.always());
    for (String sign : leaks.keySet()) {
      double[] misses = new double[causes.size()];
      for (int c = 0; c < misses.length; c++) {
        misses[c] = 1 - links.getOrDefault(sign, Map.of()).getOrDefault(causes.get(c), 0.0);
      }
      general.put(sign, misses);
    }
  }

  /** By what all odds are multiplied so that "nothing wrong" has its share; found by halving. */
  static double scale(double[] odds, double share) {
    double low = 0;
    double high = 1000;
    for (int step = 0; step < 200; step++) {
      double middle = (low + high) / 2;
      double all = 1;
      for (int one = 0; one < odds.length; one++) {
        all += middle * odds[one];
        for (int other = one + 1; other < odds.length; other++) {
          all += middle * odds[one] * middle * odds[other];
        }
      }
      if (1 / all > share) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The odds of a cause against nothing wrong, before anything is observed. */
  double odds(String cause) {
    return odds[causes.indexOf(cause)];
  }

  private double leak(String word) {
    return number("without-fault-" + word);
  }

  /** A parameter as a bare number: "95 %" is 0.95. */
  double number(String words) {
    String text = parameters.get(words.replace(' ', '-')).text();
    return text.endsWith("%")
        ? Double.parseDouble(text.substring(0, text.length() - 1).strip()) / 100
        : Double.parseDouble(text.split(" ")[0]) * (text.endsWith("cm") ? 10 : 1);
  }

  /** Sign to cause to strength; the middle of what different rules say. */
  private Map<String, Map<String, Double>> links(Conclusions said) {
    Map<String, Map<String, Map<RuleText, Double>>> words = new TreeMap<>();
    for (Shows shows : said.shows()) {
      words
          .computeIfAbsent(shows.sign(), s -> new TreeMap<>())
          .computeIfAbsent(shows.cause(), c -> new LinkedHashMap<>())
          .put(shows.rule(), number(shows.howOften()));
    }
    Map<String, Map<String, Double>> links = new TreeMap<>();
    words.forEach(
        (sign, row) ->
            row.forEach(
                (cause, byRule) -> {
                  double sum = 0;
                  for (double one : byRule.values()) {
                    sum += one;
                  }
                  links.computeIfAbsent(sign, s -> new TreeMap<>()).put(cause, sum / byRule.size());
                }));
    for (Cures cures : said.cures()) {
      links
          .computeIfAbsent("helped:" + cures.adjustment(), s -> new TreeMap<>())
          .merge(cures.cause(), number("helped-per-cure") * number(cures.howMuch()), Math::max);
    }
    for (Worsens worsens : said.worsens()) {
      links
          .computeIfAbsent("worse:" + worsens.adjustment(), s -> new TreeMap<>())
          .put(worsens.cause(), number("worse-where-worsening"));
    }
    for (Brought brought : said.brought()) {
      links
          .computeIfAbsent("helped:" + brought.adjustment(), s -> new TreeMap<>())
          .put(brought.cause(), number("helped-per-cure"));
      links
          .computeIfAbsent("worse:" + brought.adjustment(), s -> new TreeMap<>())
          .put(brought.cause(), 0.0);
    }
    return links;
  }

  /** How many centimetres were measured beyond what is usual; nought where nothing tells. */
  private double centimetres(ReportedSign sign) {
    Catalog.SignEntry entry = Answering.BOOK.catalog().signs().get(sign.id());
    if (sign.amount() == null || entry.measures() == null && entry.usual() == null) {
      return 0;
    }
    int places = entry.perSide() && sign.amount().places() % 2 == 0 ? 2 : 1;
    double mm = sign.amount().mm() / places - (entry.usual() == null ? 0 : number(entry.usual()));
    return mm / number("clear-by-measure");
  }

  /** The degree that was said; a centimetre or more that was measured is at least clear. */
  private String degree(ReportedSign sign) {
    String said = sign.degree() == null ? "unstated" : sign.degree();
    boolean more = said.equals("clear") || said.equals("strong");
    return centimetres(sign) >= 1 && !more ? "clear" : said;
  }

  /** A slight sign that bothers is one of no degree; what was measured is rarer the more it is. */
  private double leakTimes(ReportedSign sign, boolean bothers) {
    double times = number("leak-share-" + degree(sign));
    double measured = centimetres(sign);
    if (measured >= 1) {
      double rarer = number("leak-share-clear") / measured;
      return Math.min(times, Math.max(rarer, number("leak-share-strong")));
    }
    return bothers ? Math.min(times, number("leak-share-unstated")) : times;
  }

  /** What was observed, from the fitting and the findings its rules stated. */
  List<Seen> seen(Fitting fitting, Conclusions said) {
    Map<String, Seen> all = new LinkedHashMap<>();
    for (ReportedSign sign : fitting.signs()) {
      if (Answering.BOOK.catalog().signs().get(sign.id()).redFlag()) {
        continue;
      }
      String degree = sign.present() ? degree(sign) : "denied";
      boolean fact = Answering.BOOK.catalog().signs().get(sign.id()).fact();
      double trust = number("trust-" + (fact ? "fact" : degree));
      if (!fact && sign.present() && centimetres(sign) >= 1) {
        trust = Math.max(trust, number("trust-measured"));
      }
      double leakTimes = sign.present() ? leakTimes(sign, fitting.asksWhatToDo()) : 1;
      Seen before = all.get(sign.id());
      boolean better =
          before == null
              || sign.present() && !before.present()
              || sign.present() == before.present() && trust > before.trust();
      if (better) {
        all.put(sign.id(), new Seen(sign.id(), sign.present(), trust, leakTimes));
      }
    }
    for (Judged judged : said.judged()) {
      double trust = trust(judged, said);
      if (trust > 0.5) {
        all.putIfAbsent(judged.finding(), new Seen(judged.finding(), judged.holds(), trust));
      }
    }
    double trust = number("trust-outcome");
    for (EarlierAdjustment one : fitting.earlier()) {
      if (one.outcome() != null) {
        String helped = "helped:" + one.adjustment();
        String worse = "worse:" + one.adjustment();
        all.put(helped, new Seen(helped, one.outcome().equals("better"), trust));
        all.put(worse, new Seen(worse, one.outcome().equals("worse"), trust));
      }
    }
    return List.copyOf(all.values());
  }

  /**
   * How probably the true figure lies in the range it was judged to lie in; what comes of another
   * finding is trusted no more than that.
   */
  private double trust(Judged judged, Conclusions said) {
    double trust = number("trust-most");
    for (Object fact : judged.from()) {
      if (fact instanceof Figure f && f.sd() > 0) {
        double from = Double.NEGATIVE_INFINITY;
        double to = Double.POSITIVE_INFINITY;
        for (RuleText.Comparison comparison : judged.rule().comparisons()) {
          double limit = Answering.BOOK.source().parameter(comparison.parameter());
          if (comparison.figure().equals(f.id())) {
            boolean upper = comparison.how().matches("below|at most");
            from = upper ? from : Math.max(from, limit);
            to = upper ? Math.min(to, limit) : to;
          }
        }
        NormalDistribution error = new NormalDistribution(f.value(), f.sd());
        trust =
            Math.min(trust, error.cumulativeProbability(to) - error.cumulativeProbability(from));
      } else if (fact instanceof Finding finding) {
        for (Judged one : said.judged()) {
          if (one.finding().equals(finding.id()) && one.holds() == finding.holds()) {
            trust = Math.min(trust, trust(one, said));
          }
        }
      }
    }
    return trust;
  }

  /** Probabilities after weighing. */
  /**
   * @param likeliest the most probable explanation; several where they are equal but for rounding
   */
  record Weighed(double nothing, Map<String, Double> causes, List<Set<String>> likeliest) {}

  /** How often each cause fails to show as the sign: what a rule says for this fitting wins. */
  private double[] misses(String sign, Map<String, Map<String, Double>> special) {
    double[] misses = general.get(sign).clone();
    for (int c = 0; c < misses.length; c++) {
      Double own = special.getOrDefault(sign, Map.of()).get(causes.get(c));
      if (own != null) {
        misses[c] = 1 - own;
      }
    }
    return misses;
  }

  Weighed weigh(List<Seen> seen, Conclusions said) {
    var special = links(said);
    int n = causes.size();
    double[][] weight = new double[n + 1][n + 1];
    for (int a = 0; a <= n; a++) {
      for (int b = a; b <= n; b++) {
        weight[a][b] = (a == n ? 1 : odds[a]) * (b == n || a == b ? 1 : odds[b]);
      }
    }
    for (Seen one : seen) {
      double[] miss = misses(one.sign(), special);
      double silence = 1 - Math.min(1, leaks.get(one.sign()) * one.leakTimes());
      for (int a = 0; a <= n; a++) {
        for (int b = a; b <= n; b++) {
          double absent = silence;
          if (a < n) {
            absent *= miss[a];
          }
          if (b < n && b != a) {
            absent *= miss[b];
          }
          double so = one.present() ? 1 - absent : absent;
          weight[a][b] *= one.trust() * so + (1 - one.trust()) * (1 - so);
        }
      }
    }
    return summed(weight);
  }

  /** Row a, column n is cause a alone; a &lt; b &lt; n a pair; n, n nothing; a, a unused. */
  private Weighed summed(double[][] weight) {
    int n = causes.size();
    double total = weight[n][n];
    Map<Set<String>, Double> explanations = new LinkedHashMap<>();
    explanations.put(Set.of(), total);
    double[] marginal = new double[n];
    for (int a = 0; a < n; a++) {
      for (int b = a + 1; b <= n; b++) {
        double w = weight[a][b];
        total += w;
        marginal[a] += w;
        if (b < n) {
          marginal[b] += w;
        }
        explanations.put(b < n ? Set.of(causes.get(a), causes.get(b)) : Set.of(causes.get(a)), w);
      }
    }
    Map<String, Double> probability = new TreeMap<>();
    for (int c = 0; c < n; c++) {
      probability.put(causes.get(c), marginal[c] / total);
    }
    double most = Collections.max(explanations.values());
    List<Set<String>> likeliest =
        explanations.entrySet().stream()
            .filter(one -> one.getValue() >= most * (1 - SAME))
            .map(Map.Entry::getKey)
            .toList();
    return new Weighed(weight[n][n] / total, probability, likeliest);
  }

  /** Present signs which the likeliest explanation makes at most so many times likelier. */
  List<String> unexplained(List<Seen> seen, Conclusions said, Set<String> likeliest) {
    var special = links(said);
    List<String> left = new ArrayList<>();
    for (Seen one : seen) {
      if (one.present()) {
        double[] miss = misses(one.sign(), special);
        double leak = leaks.get(one.sign());
        double absent = 1 - leak;
        for (String cause : likeliest) {
          absent *= miss[causes.indexOf(cause)];
        }
        if (1 - absent <= number("unexplained-ratio") * leak) {
          left.add(one.sign());
        }
      }
    }
    return left;
  }
}
