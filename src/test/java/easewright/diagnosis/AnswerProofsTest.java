package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer.CauseChance;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.ChangeNote;
import easewright.diagnosis.Answer.EvidenceNote;
import easewright.diagnosis.Answer.Measurement;
import easewright.diagnosis.Answer.QuestionNote;
import easewright.diagnosis.Answer.WhyNotNote;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.rulebook.RuleBookSource;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What an answer says of itself holds when the fitting is changed and answered again. */
@Tag("long")
@net.jqwik.api.Tag("long")
class AnswerProofsTest {
  /** Numbers are stated to four decimals. */
  private static final PlainWeighing PLAIN = new PlainWeighing();

  private static final double ROUNDING = 0.5e-4;

  private static final double LEAST = Answering.KNOWLEDGE.parameter("worth-mentioning");
  private static final Collection<String> READ_BY_RULES = Answering.signsReadByRules();

  /**
   * Weights of evidence add up: Good 1950, Probability and the Weighing of Evidence (from memory).
   */
  @Property(tries = 1000, shrinking = ShrinkingMode.BOUNDED)
  void prior_and_weights_of_evidence_add_up_to_the_stated_decibans(
      @ForAll("fittings") ObjectNode given) {
    Answer answer = Answering.answer(given);
    if (answer.nothingTighter()) {
      return; // what an earlier, tightening change did counts there, and is not told
    }
    for (CauseNote cause : answer.causes()) {
      List<EvidenceNote> evidence = evidence(cause);
      double sum =
          cause.priorDecibans() + evidence.stream().mapToDouble(EvidenceNote::decibans).sum();
      assertEquals(
          cause.posteriorDecibans(), sum, (evidence.size() + 2) * ROUNDING + 1e-9, cause.id());
      double prior = 10 * Math.log10(PLAIN.odds(cause.id()));
      assertEquals(prior, cause.priorDecibans(), ROUNDING + 1e-9);
    }
  }

  /** Sizes and plans go by the caution, so none may stop tightening unnamed. */
  @Property(tries = 1000, shrinking = ShrinkingMode.BOUNDED)
  void whatever_stops_tightening_is_a_caution_of_the_answer(@ForAll("fittings") ObjectNode given) {
    Answer answer = Answering.answer(given);
    assertEquals(answer.notNow() != null, answer.nothingTighter() || answer.isDanger());
  }

  @Property(tries = 300, shrinking = ShrinkingMode.BOUNDED)
  void a_fitting_without_a_cited_sign_makes_the_cause_as_probable_as_stated(
      @ForAll("fittings") ObjectNode given) {
    Fitting fitting = Answering.read(given);
    for (CauseNote cause : Answering.DIAGNOSIS.answer(fitting).causes()) {
      for (EvidenceNote evidence : evidence(cause)) {
        if (evidence.kind().equals("sign") && !READ_BY_RULES.contains(evidence.id())) {
          Answer without =
              Answering.DIAGNOSIS.answer(Answering.withSigns(fitting, without(fitting, evidence)));
          assertProbable(evidence.probabilityWithout(), cause.id(), without, evidence.id());
        }
      }
    }
  }

  private static List<ReportedSign> without(Fitting fitting, EvidenceNote evidence) {
    return fitting.signs().stream().filter(sign -> !sign.id().equals(evidence.id())).toList();
  }

  @Property(tries = 300, shrinking = ShrinkingMode.BOUNDED)
  void an_answer_to_a_question_changes_the_causes_as_foretold(
      @ForAll("fittings") ObjectNode given) {
    Fitting fitting = Answering.read(given);
    for (QuestionNote question : Answering.DIAGNOSIS.answer(fitting).questions()) {
      if (!READ_BY_RULES.contains(question.sign())) {
        for (boolean yes : new boolean[] {true, false}) {
          Answer after = Answering.DIAGNOSIS.answer(answered(fitting, question.sign(), yes));
          for (CauseChance chance : yes ? question.ifYes() : question.ifNo()) {
            assertProbable(
                chance.probability(), chance.id(), after, question.sign() + (yes ? "+" : "-"));
          }
        }
      }
    }
  }

  private static Fitting answered(Fitting fitting, String sign, boolean present) {
    List<ReportedSign> signs = new ArrayList<>(fitting.signs());
    signs.add(new ReportedSign(sign, present, null, null, null, null, List.of()));
    return Answering.withSigns(fitting, signs);
  }

  private static void assertProbable(double stated, String cause, Answer answer, String after) {
    Optional<Double> now =
        answer.causes().stream()
            .filter(note -> note.id().equals(cause))
            .map(CauseNote::probability)
            .findFirst();
    String what = cause + " after " + after;
    if (now.isPresent()) {
      assertEquals(stated, now.get(), 2 * ROUNDING + 1e-9, what);
    } else {
      assertTrue(stated < LEAST + ROUNDING, what + ": " + stated + " and not mentioned");
    }
  }

  @Property(tries = 200, shrinking = ShrinkingMode.BOUNDED)
  void a_turn_that_would_put_a_cause_first_does(
      @ForAll("fittings") ObjectNode given, @ForAll("causes") String cause) {
    Fitting fitting = Answering.withWhyNot(Answering.read(given), List.of(cause));
    for (WhyNotNote why : Answering.DIAGNOSIS.answer(fitting).whyNot()) {
      for (List<ChangeNote> turn : why.nearest()) {
        turn.forEach(
            change -> assertFalse(change.name().matches("(helped|worse):.*"), change.name()));
        if (turn.stream().allMatch(AnswerProofsTest::onlyEvidence)) {
          Fitting turned = fitting;
          for (ChangeNote change : turn) {
            turned = turned(turned, change);
          }
          Answer after =
              Answering.DIAGNOSIS.answer(Answering.withWhyNot(turned, List.of(why.cause())));
          assertEquals(List.of(), after.whyNot(), why.cause() + " by " + turn);
        }
      }
    }
  }

  private static boolean onlyEvidence(ChangeNote change) {
    return Answering.BOOK.catalog().signs().containsKey(change.id())
        && !READ_BY_RULES.contains(change.id());
  }

  private static Fitting turned(Fitting fitting, ChangeNote change) {
    List<ReportedSign> others =
        fitting.signs().stream().filter(sign -> !sign.id().equals(change.id())).toList();
    boolean wasPresent =
        fitting.signs().stream().anyMatch(s -> s.id().equals(change.id()) && s.present());
    Fitting left = Answering.withSigns(fitting, others);
    return switch (change.change()) {
      case "add" -> answered(left, change.id(), change.present());
      case "reverse" -> answered(left, change.id(), !wasPresent);
      default -> left;
    };
  }

  @Property(tries = 300, shrinking = ShrinkingMode.BOUNDED)
  void a_fact_no_rule_reads_changes_nothing(@ForAll("fittings") ObjectNode given) {
    Fitting fitting = Answering.read(given);
    Map<String, String> choices = new LinkedHashMap<>();
    choices.put("colour of the thread", "grey");
    choices.putAll(fitting.choices());
    Fitting more =
        fitting.sheet() == null ? Answering.withChoices(fitting, choices) : insertsMoved(fitting);
    assertEquals(Answering.DIAGNOSIS.answer(fitting), Answering.DIAGNOSIS.answer(more));
  }

  /** The pocket for inserts is no concern of any rule. */
  private static Fitting insertsMoved(Fitting fitting) {
    Map<String, String> choices = new LinkedHashMap<>(fitting.choices());
    choices.merge(
        "inserts", "side-opening", (old, other) -> old.equals("none") ? "side-opening" : "none");
    return Answering.withChoices(fitting, choices);
  }

  @Property(tries = 300, shrinking = ShrinkingMode.BOUNDED)
  void the_request_is_said_back_as_it_was_made(@ForAll("fittings") ObjectNode given) {
    Fitting fitting = Answering.read(given);
    Answer.Understood understood = Answering.DIAGNOSIS.answer(fitting).understood();
    assertEquals(
        fitting.signs().stream()
            .map(s -> List.of(s.id(), s.present(), "" + s.place(), "" + s.side(), "" + s.degree()))
            .toList(),
        understood.signs().stream()
            .map(s -> List.of(s.id(), s.present(), "" + s.place(), "" + s.side(), "" + s.degree()))
            .toList());
    assertEquals(given.path("body").size(), understood.body().size());
    for (Measurement one : understood.body()) {
      assertEquals(
          given.at("/body/" + one.name()).asText(), Math.round(one.mm()) + " mm", one.name());
    }
    assertEquals(given.path("sizeCut").asText(null), understood.sizeCut());
  }

  @Test
  void the_stamp_is_that_of_the_rule_book_as_written() {
    RuleBookSource written = RuleBookSource.read(Path.of("rules"));
    ObjectNode given = JsonNodeFactory.instance.objectNode();
    given.putArray("signs").addObject().put("sign", "straps-slip-off");
    Answer answer = Answering.answer(given);
    assertEquals(written.version(), answer.ruleBook().version());
    assertEquals(written.hash(), answer.ruleBook().hash());
  }

  /** A sign that was looked for and not found cannot speak for a fault (noisy-OR is monotone). */
  @Property(tries = 1000, shrinking = ShrinkingMode.BOUNDED)
  void what_was_denied_never_speaks_for_a_cause(@ForAll("fittings") ObjectNode given) {
    for (CauseNote cause : Answering.answer(given).causes()) {
      for (EvidenceNote evidence : evidence(cause)) {
        assertTrue(
            evidence.present() ? evidence.decibans() >= 0 : evidence.decibans() <= 0,
            cause.id() + ": " + evidence);
      }
    }
  }

  private static List<EvidenceNote> evidence(CauseNote cause) {
    return Stream.concat(cause.evidenceFor().stream(), cause.evidenceAgainst().stream()).toList();
  }

  @Provide
  Arbitrary<String> causes() {
    return Arbitraries.of(Answering.BOOK.catalog().causes().keySet());
  }

  @Provide
  Arbitrary<ObjectNode> fittings() {
    return FittingArbitrary.any();
  }
}
