package easewright.diagnosis;

import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.rulebook.RuleText;
import easewright.rulebook.facts.Figure;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The rule book without an engine: every rule's sentences, read as a teacher would read them, and
 * found by an index from each fact and figure to the rules that name it. The grammar is that of
 * rules/README.md.
 */
final class RulesByHand {
  private static final String NAME = "\"([^\"]*)\"";
  static final List<RuleText> RULES = Answering.BOOK.source().rules();

  private RulesByHand() {}

  /** What is known, as sentences; numbers by name. */
  static final class Known {
    final Set<String> facts = new HashSet<>();
    final Map<String, Double> figures = new HashMap<>();

    Known copy() {
      Known copy = new Known();
      copy.facts.addAll(facts);
      copy.figures.putAll(figures);
      return copy;
    }
  }

  /** A condition of a rule: what it is looked up by, and whether it holds. */
  private record Wanted(String index, Predicate<Known> holds) {}

  /** One kind of condition: its words, and what they want. */
  private record Condition(Pattern words, Function<Matcher, Wanted> as) {
    static Condition of(String words, Function<Matcher, Wanted> as) {
      return new Condition(Pattern.compile(words.replace("_", NAME)), as);
    }
  }

  private static final List<Condition> CONDITIONS =
      List.of(
          fact("in any fitting"),
          fact("the wearer reports _ at the _"),
          fact("the wearer reports _ on one side only"),
          fact("the wearer reports _ _"),
          fact("the wearer reports _"),
          fact("the wearer denies _"),
          fact("the wearer is _"),
          fact("the choice _ is _"),
          fact("the pattern is _"),
          fact("the last change was tried and it was _"),
          fact("_ was tried and it was _"),
          fact("it is found that _"),
          fact("it is found not so that _"),
          fact("_ is likely"),
          fact("_ is in play"),
          Condition.of(
              "the _ is (below|above|at least|at most) _",
              w -> compare(id(w.group(1)), w.group(2), w.group(3))));

  private static Condition fact(String words) {
    return Condition.of(
        words,
        w -> {
          String fact = plain(w.group());
          return new Wanted(fact, known -> known.facts.contains(fact));
        });
  }

  private static Wanted compare(String name, String how, String parameter) {
    double limit = Answering.BOOK.source().parameter(id(parameter));
    return new Wanted(
        name,
        known -> {
          Double value = known.figures.get(name);
          return value != null
              && switch (how) {
                case "below" -> value < limit;
                case "above" -> value > limit;
                case "at least" -> value >= limit;
                default -> value <= limit;
              };
        });
  }

  private static String id(String words) {
    return words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
  }

  /** A sentence with every name as an id. */
  private static String plain(String sentence) {
    return Pattern.compile(NAME).matcher(sentence).replaceAll(m -> "\"" + id(m.group(1)) + "\"");
  }

  /** A rule read: its conditions, what it finds, and what it says, with every name as an id. */
  private record Read(List<Wanted> when, List<String> finds, List<String> says) {
    static Read of(RuleText rule) {
      List<String> then = part(rule, "then").stream().map(RulesByHand::plain).toList();
      return new Read(
          part(rule, "when").stream().map(RulesByHand::condition).toList(),
          then.stream().filter(sentence -> sentence.startsWith("it is found")).toList(),
          then.stream().map(sentence -> rule.key() + " " + sentence).toList());
    }

    boolean holds(Known known) {
      for (Wanted wanted : when) {
        if (!wanted.holds().test(known)) {
          return false;
        }
      }
      return true;
    }
  }

  private static final Map<String, List<Read>> INDEX = new HashMap<>();

  static {
    for (RuleText rule : RULES) {
      Read read = Read.of(rule);
      read.when().stream()
          .map(Wanted::index)
          .distinct()
          .forEach(key -> INDEX.computeIfAbsent(key, one -> new ArrayList<>()).add(read));
    }
  }

  static List<String> part(RuleText rule, String of) {
    String[] halves = rule.body().split("(?m)^then\\s*$", 2);
    String half = of.equals("when") ? halves[0].replaceFirst("^when\\s*", "") : halves[1];
    return half.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
  }

  private static Wanted condition(String sentence) {
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
    Set<String> said = new HashSet<>();
    Set<Read> fired = Collections.newSetFromMap(new IdentityHashMap<>());
    Deque<String> news = new ArrayDeque<>(known.facts);
    news.addAll(known.figures.keySet());
    while (!news.isEmpty()) {
      for (Read rule : INDEX.getOrDefault(news.poll(), List.of())) {
        if (!fired.contains(rule) && rule.holds(known)) {
          fired.add(rule);
          said.addAll(rule.says());
          rule.finds().stream().filter(known.facts::add).forEach(news::add);
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
        sign.when()
            .forEach(
                time ->
                    known.facts.add("the wearer reports \"%s\" \"%s\"".formatted(sign.id(), time)));
        if (sides(fitting, sign.id()).equals(Set.of(String.valueOf(sign.side())))) {
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
    for (EarlierAdjustment one : Answering.tried(fitting)) {
      known.facts.add(
          "\"%s\" was tried and it was \"%s\"".formatted(one.adjustment(), one.outcome()));
    }
    if (!fitting.earlier().isEmpty()) {
      EarlierAdjustment last = fitting.earlier().get(fitting.earlier().size() - 1);
      known.facts.add("the last change was tried and it was \"%s\"".formatted(last.outcome()));
    }
    for (Figure figure : Answering.figures(fitting).values()) {
      known.figures.put(figure.id(), figure.value());
    }
    return known;
  }

  /** The sides on which a sign was seen, of those reports that name one of the two. */
  private static Set<String> sides(Fitting fitting, String sign) {
    return fitting.signs().stream()
        .filter(one -> one.present() && one.id().equals(sign))
        .map(one -> String.valueOf(one.side()))
        .filter(Set.of("left", "right")::contains)
        .collect(Collectors.toSet());
  }
}
