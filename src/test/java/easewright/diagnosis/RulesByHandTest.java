package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.RulesByHand.Known;
import easewright.fitting.Fitting;
import easewright.rulebook.Conclusions;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleText;
import easewright.rulebook.facts.AnyFitting;
import easewright.rulebook.facts.InPlay;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
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
  private static Set<String> saidByTheEngine(Conclusions said) {
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
    said.brought()
        .forEach(
            s ->
                all.add(
                    "%s \"%s\" brought \"%s\""
                        .formatted(s.rule().key(), s.adjustment(), s.cause())));
    said.cautions()
        .forEach(s -> all.add("%s show the caution \"%s\"".formatted(s.rule().key(), s.caution())));
    said.tighteningHeld().forEach(s -> all.add(s.rule().key() + " " + held(s)));
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

  private static String held(Conclusions.TighteningHeld held) {
    if (held.reason() == null) {
      return "advise no tightening";
    }
    return "take up slack only because \"%s\"".formatted(held.reason());
  }

  @Property(tries = 1000, shrinking = ShrinkingMode.BOUNDED)
  void the_engine_says_what_the_rules_say_by_hand(
      @ForAll("fittings") ObjectNode given, @ForAll Random random) {
    Fitting fitting = Answering.read(given);
    List<Object> facts = Answering.facts(fitting);
    Known known = RulesByHand.known(fitting);
    try (RuleBook.Consultation consultation = Answering.BOOK.open()) {
      Set<String> before = saidByTheEngine(consultation.hear(facts));
      assertEquals(RulesByHand.said(known), before);
      List<Object> weighed = weighed(random, known);
      Set<String> after = saidByTheEngine(consultation.hear(weighed));
      assertEquals(RulesByHand.said(known), after);
    }
  }

  /** Some causes in play, as they may be after weighing. */
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
    return facts;
  }

  /** What is said after weighing must come too late for nothing. */
  @Test
  void rules_that_speak_after_weighing_neither_judge_nor_weigh() {
    List<String> late = new ArrayList<>();
    for (RuleText rule : RulesByHand.RULES) {
      boolean after =
          RulesByHand.part(rule, "when").stream()
              .anyMatch(s -> s.matches("\"[^\"]*\" is (likely|in play)"));
      boolean weighs =
          RulesByHand.part(rule, "then").stream()
              .anyMatch(s -> s.matches("it is found.*|.* shows as .*"));
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
    for (RuleText rule : RulesByHand.RULES) {
      List<String> when = RulesByHand.part(rule, "when");
      if (when.contains("in any fitting")
          && (when.size() > 1
              || !RulesByHand.part(rule, "then").stream()
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
    Conclusions together = Answering.consult(facts);
    assertEquals(apart, saidByTheEngine(together));
    assertTrue(together.shows().size() >= Answering.BOOK.always().shows().size());
  }

  /** Two rules may not judge one finding both ways: their order would decide. */
  @Property(tries = 1000, shrinking = ShrinkingMode.BOUNDED)
  void a_finding_is_judged_one_way_only(@ForAll("fittings") ObjectNode given) {
    Map<String, Boolean> judged = new HashMap<>();
    for (Conclusions.Judged one :
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
