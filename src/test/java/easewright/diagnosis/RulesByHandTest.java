package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleText;
import easewright.rulebook.Statements;
import easewright.rulebook.facts.AnyFitting;
import easewright.rulebook.facts.Figure;
import easewright.rulebook.facts.InPlay;
import easewright.rulebook.facts.Proposal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import org.junit.jupiter.api.Test;

/**
 * Every rule's sentences, read here as a teacher would read them and applied to the fitting by
 * hand, say what the engine says. The grammar is that of rules/README.md.
 */
class RulesByHandTest {
  private static final String NAME = "\"([^\"]*)\"";
  private static final List<RuleText> RULES = Answering.BOOK.source().rules();

  /** What is known, as sentences; numbers by name. */
  private static final class Known {
    final Set<String> facts = new HashSet<>();
    final Map<String, Double> figures = new HashMap<>();
    final Map<String, Double> amounts = new HashMap<>();
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
                      part(rule, "when").stream().map(RulesByHandTest::condition).toList(),
                      part(rule, "then").stream().map(RulesByHandTest::plain).toList()))
          .toList();

  private static List<String> part(RuleText rule, String of) {
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
    return fail("No condition reads: " + sentence);
  }

  /** Every sentence that follows, with the rule that says it, findings feeding further rules. */
  private static Set<String> saidByHand(Known known) {
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

  private static Set<String> saidByTheEngine(Statements said) {
    Set<String> all = new TreeSet<>();
    said.judged()
        .forEach(
            s -> {
              String how = s.holds() ? "it is found that" : "it is found not so that";
              all.add("%s %s \"%s\"".formatted(s.rule().key(), how, s.finding()));
            });
    said.shows()
        .forEach(
            s -> {
              String often = s.howOften().replace('-', ' ');
              all.add(
                  "%s \"%s\" %s shows as \"%s\""
                      .formatted(s.rule().key(), s.cause(), often, s.sign()));
            });
    said.cures()
        .forEach(
            s ->
                all.add(
                    "%s \"%s\" %s cures \"%s\""
                        .formatted(s.rule().key(), s.adjustment(), s.howMuch(), s.cause())));
    said.worsens()
        .forEach(
            s ->
                all.add(
                    "%s \"%s\" worsens \"%s\""
                        .formatted(s.rule().key(), s.adjustment(), s.cause())));
    said.cautions()
        .forEach(s -> all.add("%s show the caution \"%s\"".formatted(s.rule().key(), s.caution())));
    said.noTightening().forEach(rule -> all.add(rule.key() + " advise no tightening"));
    said.firstOfAll()
        .forEach(s -> all.add("%s first of all \"%s\"".formatted(s.rule().key(), s.adjustment())));
    said.heldBack()
        .forEach(
            s ->
                all.add(
                    "%s hold back \"%s\" because \"%s\""
                        .formatted(s.rule().key(), s.adjustment(), s.reason())));
    said.replaced()
        .forEach(
            s ->
                all.add(
                    "%s put \"%s\" in place of \"%s\""
                        .formatted(s.rule().key(), s.adjustment(), s.other())));
    return all;
  }

  private static Known known(Fitting fitting) {
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

  @Property(tries = 1000, shrinking = ShrinkingMode.BOUNDED)
  void the_engine_says_what_the_rules_say_by_hand(
      @ForAll("fittings") ObjectNode given, @ForAll Random random) {
    Fitting fitting = Answering.read(given);
    List<Object> facts = Answering.facts(fitting);
    Known known = known(fitting);
    try (RuleBook.Consultation consultation = Answering.BOOK.open()) {
      Set<String> before = saidByTheEngine(consultation.hear(facts));
      assertEquals(saidByHand(known), before);
      List<Object> weighed = weighed(random, known);
      Set<String> after = saidByTheEngine(consultation.hear(weighed));
      assertEquals(saidByHand(known), after);
    }
  }

  /** Some causes in play, and some amounts, as they may stand after weighing. */
  private static List<Object> weighed(Random random, Known known) {
    List<Object> facts = new ArrayList<>();
    for (String cause : Answering.BOOK.catalog().causes().keySet()) {
      if (random.nextInt(8) == 0) {
        boolean likely = random.nextBoolean();
        facts.add(new InPlay(cause, likely));
        known.facts.add("\"%s\" is in play".formatted(cause));
        if (likely) {
          known.facts.add("\"%s\" is likely".formatted(cause));
        }
      }
    }
    for (String adjustment : Answering.BOOK.catalog().adjustments().keySet()) {
      if (random.nextInt(4) == 0) {
        double mm = random.nextInt(120);
        facts.add(new Proposal(adjustment, mm));
        known.amounts.put(adjustment, mm);
      }
    }
    return facts;
  }

  /** What is said after weighing must come too late for nothing. */
  @Test
  void rules_that_speak_after_weighing_neither_judge_nor_weigh() {
    List<String> late = new ArrayList<>();
    for (RuleText rule : RULES) {
      boolean after =
          part(rule, "when").stream()
              .anyMatch(s -> s.matches("\"[^\"]*\" is (likely|in play)|the amount to .*"));
      boolean weighs =
          part(rule, "then").stream().anyMatch(s -> s.matches("it is found.*|.* shows as .*"));
      if (after && weighs) {
        late.add(rule.name());
      }
    }
    assertEquals(List.of(), late);
  }

  /** In any fitting means in any: with another condition beside it such a rule never speaks. */
  @Test
  void what_holds_in_any_fitting_has_no_other_condition_and_only_weighs_or_cures() {
    List<String> wrong = new ArrayList<>();
    for (RuleText rule : RULES) {
      List<String> when = part(rule, "when");
      if (when.contains("in any fitting")
          && (when.size() > 1
              || !part(rule, "then").stream()
                  .allMatch(s -> s.matches(".* (shows as|cures|worsens) \"[^\"]*\"")))) {
        wrong.add(rule.name());
      }
    }
    assertEquals(List.of(), wrong);
  }

  /** What holds in every fitting is said once for all; a fitting adds only its own. */
  @Property(tries = 300, shrinking = ShrinkingMode.BOUNDED)
  void asked_together_the_rules_say_what_they_say_apart(@ForAll("fittings") ObjectNode given) {
    List<Object> facts = Answering.facts(Answering.read(given));
    Set<String> apart = saidByTheEngine(Answering.BOOK.always());
    apart.addAll(saidByTheEngine(Answering.consult(facts)));
    facts.add(new AnyFitting());
    Statements together = Answering.consult(facts);
    assertEquals(apart, saidByTheEngine(together));
    assertTrue(together.shows().size() >= Answering.BOOK.always().shows().size());
  }

  /** Two rules may not judge one finding both ways: their order would decide. */
  @Property(tries = 1000, shrinking = ShrinkingMode.BOUNDED)
  void a_finding_is_judged_one_way_only(@ForAll("fittings") ObjectNode given) {
    Map<String, Boolean> judged = new HashMap<>();
    for (Statements.Judged one :
        Answering.consult(Answering.facts(Answering.read(given))).judged()) {
      Boolean other = judged.put(one.finding(), one.holds());
      assertTrue(other == null || other == one.holds(), one.finding());
    }
  }

  @Provide
  Arbitrary<ObjectNode> fittings() {
    return FittingArbitrary.any();
  }
}
