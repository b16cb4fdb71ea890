package easewright.diagnosis;

import easewright.rulebook.RuleText;
import easewright.rulebook.facts.Figure;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The rule book without an engine: every rule's sentences, read as a teacher would read them, and
 * tried one after another in plain loops. The grammar is that of rules/README.md.
 */
final class RulesByHand {
  private static final String NAME = "\"([^\"]*)\"";
  static final List<RuleText> RULES = Answering.BOOK.source().rules();

  private RulesByHand() {}

  /** What is known, as sentences; numbers by name. */
  static final class Known {
    final Set<String> facts = new HashSet<>();
    final Map<String, Double> figures = new HashMap<>();
    final Map<String, Double> amounts = new HashMap<>();

    Known copy() {
      Known copy = new Known();
      copy.facts.addAll(facts);
      copy.figures.putAll(figures);
      copy.amounts.putAll(amounts);
      return copy;
    }
  }

  /** One kind of condition: its words, and whether they hold. */
  private record Condition(Pattern words, Function<Matcher, Predicate<Known>> as) {
    static Condition of(String words, Function<Matcher, Predicate<Known>> as) {
      return new Condition(Pattern.compile(words.replace("_", NAME)), as);
    }
  }

  private static final List<Condition> CONDITIONS =
      List.of(
          fact("in any fitting"),
          fact("the wearer reports _ at the _"),
          fact("the wearer reports _ on one side only"),
          fact("the wearer reports _"),
          fact("the wearer denies _"),
          fact("the wearer is _"),
          fact("the choice _ is _"),
          fact("the pattern is _"),
          fact("_ was tried and it was _"),
          fact("it is found that _"),
          fact("it is found not so that _"),
          fact("_ is likely"),
          fact("_ is in play"),
          Condition.of(
              "the _ is (below|above|at least|at most) _",
              w -> compare(known -> known.figures.get(id(w.group(1))), w.group(2), w.group(3))),
          Condition.of(
              "the amount to _ is (below|above|at least|at most) _",
              w -> compare(known -> known.amounts.get(id(w.group(1))), w.group(2), w.group(3))));

  private static Condition fact(String words) {
    return Condition.of(
        words,
        w -> {
          String fact = plain(w.group());
          return known -> known.facts.contains(fact);
        });
  }

  private static Predicate<Known> compare(
      Function<Known, Double> number, String how, String parameter) {
    double limit = Answering.BOOK.source().parameter(id(parameter));
    return known -> {
      Double value = number.apply(known);
      return value != null
          && switch (how) {
            case "below" -> value < limit;
            case "above" -> value > limit;
            case "at least" -> value >= limit;
            default -> value <= limit;
          };
    };
  }

  private static String id(String words) {
    return words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
  }

  /** A sentence with every name as an id. */
  private static String plain(String sentence) {
    return Pattern.compile(NAME).matcher(sentence).replaceAll(m -> "\"" + id(m.group(1)) + "\"");
  }

  /** A rule read: its conditions, and its conclusions with every name as an id. */
  private record Read(String key, List<Predicate<Known>> when, List<String> then) {}

  private static final List<Read> READ =
      RULES.stream()
          .map(
              rule ->
                  new Read(
                      rule.key(),
                      part(rule, "when").stream().map(RulesByHand::condition).toList(),
                      part(rule, "then").stream().map(RulesByHand::plain).toList()))
          .toList();

  static List<String> part(RuleText rule, String of) {
    String[] halves = rule.body().split("(?m)^then\\s*$", 2);
    String half = of.equals("when") ? halves[0].replaceFirst("^when\\s*", "") : halves[1];
    return half.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
  }

  private static Predicate<Known> condition(String sentence) {
    for (Condition condition : CONDITIONS) {
      Matcher words = condition.words().matcher(sentence);
      if (words.matches()) {
        return condition.as().apply(words);
      }
    }
    throw new IllegalStateException("No condition reads: " + sentence);
  }

  /** Every sentence that follows, with the rule that says it, findings feeding further rules. */
  static Set<String> said(Known known) {
    Set<String> said = new TreeSet<>();
    for (int before = -1; before < said.size(); ) {
      before = said.size();
      for (Read rule : READ) {
        if (rule.when().stream().allMatch(holds -> holds.test(known))) {
          for (String sentence : rule.then()) {
            said.add(rule.key() + " " + sentence);
            if (sentence.startsWith("it is found")) {
              known.facts.add(sentence);
            }
          }
        }
      }
    }
    return said;
  }

  static Known known(Fitting fitting) {
    Known known = new Known();
    for (ReportedSign sign : fitting.signs()) {
      if (sign.present()) {
        known.facts.add("the wearer reports \"%s\"".formatted(sign.id()));
        known.facts.add(
            "the wearer reports \"%s\" at the \"%s\"".formatted(sign.id(), sign.place()));
        if ("left".equals(sign.side()) || "right".equals(sign.side())) {
          known.facts.add("the wearer reports \"%s\" on one side only".formatted(sign.id()));
        }
      } else {
        known.facts.add("the wearer denies \"%s\"".formatted(sign.id()));
      }
    }
    fitting
        .circumstances()
        .ids()
        .forEach(id -> known.facts.add("the wearer is \"%s\"".formatted(id)));
    fitting
        .choices()
        .forEach(
            (c, option) -> known.facts.add("the choice \"%s\" is \"%s\"".formatted(c, option)));
    Draft.of(fitting, Answering.BOOK.source())
        .traits()
        .forEach(trait -> known.facts.add("the pattern is \"%s\"".formatted(trait)));
    for (EarlierAdjustment one : fitting.earlier()) {
      known.facts.add(
          "\"%s\" was tried and it was \"%s\"".formatted(one.adjustment(), one.outcome()));
    }
    for (Figure figure : Answering.figures(fitting).values()) {
      known.figures.put(figure.id(), figure.value());
    }
    return known;
  }
}
