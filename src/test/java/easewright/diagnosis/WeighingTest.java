package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.EvidenceNote;
import easewright.diagnosis.Answer.SignNote;
import easewright.diagnosis.PlainWeighing.Seen;
import easewright.diagnosis.PlainWeighing.Weighed;
import easewright.fitting.Circumstances;
import easewright.fitting.Design;
import easewright.fitting.Fitting;
import easewright.fitting.GarmentMeasurements;
import easewright.fitting.Making;
import easewright.fitting.ReportedSign;
import easewright.inference.Posterior;
import easewright.measure.BodyMeasurements;
import easewright.measure.UnitSystem;
import easewright.rulebook.Conclusions;
import easewright.rulebook.RuleBook;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * An independent plain evaluator of the same links agrees with the answer: definitions in Jaakkola
 * and Jordan 1999, JAIR 10.
 */
@Tag("long")
@net.jqwik.api.Tag("long")
class WeighingTest {
  private static final int SIGN_SETS = 20_000;
  private static final double ROUNDING = 0.5e-4 + 1e-9;
  private static final PlainWeighing PLAIN = new PlainWeighing();

  @Test
  void twenty_thousand_sets_of_signs_weigh_the_same_by_hand() {
    Random random = new Random();
    long seed = random.nextLong();
    random.setSeed(seed);
    List<String> ids = new ArrayList<>(Answering.BOOK.catalog().signs().keySet());
    double worst = 0;
    for (int i = 0; i < SIGN_SETS; i++) {
      Fitting fitting = only(signs(random, ids));
      try (RuleBook.Consultation consultation = Answering.BOOK.open()) {
        Conclusions said = consultation.hear(Answering.facts(fitting));
        Posterior posterior =
            Posterior.infer(
                Answering.KNOWLEDGE.networkFor(said, List.of()),
                Report.of(fitting, List.of(), said, Answering.KNOWLEDGE).stream()
                    .map(Report::observation)
                    .toList());
        Weighed plain = PLAIN.weigh(PLAIN.seen(fitting, said), said);
        worst = Math.max(worst, Math.abs(plain.nothing() - posterior.nothing()));
        for (Map.Entry<String, Double> cause : plain.causes().entrySet()) {
          worst =
              Math.max(worst, Math.abs(cause.getValue() - posterior.probability(cause.getKey())));
        }
        assertTrue(worst < 1e-9, "seed " + seed + ", set " + i + ": " + fitting.signs());
      }
    }
  }

  private static List<ReportedSign> signs(Random random, List<String> ids) {
    Collections.shuffle(ids.subList(0, 40), random);
    Collections.rotate(ids, random.nextInt(ids.size()));
    List<ReportedSign> signs = new ArrayList<>();
    for (String id : ids.subList(0, 1 + random.nextInt(12))) {
      boolean present = random.nextInt(3) > 0;
      String degree =
          present ? new String[] {null, "slight", "clear", "strong"}[random.nextInt(4)] : null;
      List<String> where = Answering.BOOK.catalog().signs().get(id).where();
      String place = random.nextBoolean() ? null : where.get(random.nextInt(where.size()));
      if (random.nextInt(10) == 0) {
        signs.add(new ReportedSign(id, present, place, "left", degree, null, List.of()));
        signs.add(
            new ReportedSign(id, random.nextBoolean(), place, "right", null, null, List.of()));
      } else {
        signs.add(new ReportedSign(id, present, place, null, degree, null, List.of()));
      }
    }
    return signs;
  }

  private static Fitting only(List<ReportedSign> signs) {
    return new Fitting(
        UnitSystem.METRIC,
        "sports-bra",
        BodyMeasurements.NONE,
        Map.of(),
        null,
        null,
        null,
        Map.of(),
        Design.NONE,
        GarmentMeasurements.NONE,
        Map.of(),
        null,
        new Making(null, null, null),
        signs,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new Circumstances(Set.of(), null),
        List.of(),
        List.of(),
        false,
        List.of());
  }

  @Property(tries = 2000, shrinking = ShrinkingMode.BOUNDED)
  void an_answer_states_what_weighing_by_hand_gives(@ForAll("fittings") ObjectNode given) {
    Fitting fitting = Answering.read(given);
    Conclusions said = Answering.consult(Answering.facts(fitting));
    List<Seen> seen = PLAIN.seen(fitting, said);
    Weighed plain = PLAIN.weigh(seen, said);
    Answer answer = Answering.DIAGNOSIS.answer(fitting);
    assertEquals(plain.nothing(), answer.nothingWrong(), ROUNDING);
    double least = PLAIN.number("worth-mentioning");
    Map<String, Double> mentioned =
        answer.causes().stream().collect(Collectors.toMap(CauseNote::id, CauseNote::probability));
    plain
        .causes()
        .forEach(
            (cause, probability) -> {
              if (mentioned.containsKey(cause)) {
                assertEquals(probability, mentioned.get(cause), ROUNDING, cause);
              } else {
                assertTrue(probability < least + 1e-9, cause);
              }
            });
  }

  @Property(tries = 500, shrinking = ShrinkingMode.BOUNDED)
  void without_a_cited_report_a_cause_is_as_probable_as_stated(
      @ForAll("fittings") ObjectNode given) {
    Fitting fitting = Answering.read(given);
    Conclusions said = Answering.consult(Answering.facts(fitting));
    List<Seen> seen = PLAIN.seen(fitting, said);
    for (CauseNote cause : Answering.DIAGNOSIS.answer(fitting).causes()) {
      for (EvidenceNote evidence : evidence(cause)) {
        List<Seen> left = new ArrayList<>(seen);
        assertTrue(
            left.removeIf(one -> one.sign().replace(':', '-').equals(evidence.id())),
            evidence.id());
        assertEquals(
            PLAIN.weigh(left, said).causes().get(cause.id()),
            evidence.probabilityWithout(),
            ROUNDING,
            cause.id() + " without " + evidence.id());
      }
    }
  }

  private static List<EvidenceNote> evidence(CauseNote cause) {
    return Stream.concat(cause.evidenceFor().stream(), cause.evidenceAgainst().stream()).toList();
  }

  @Property(tries = 500, shrinking = ShrinkingMode.BOUNDED)
  void the_signs_left_unexplained_are_those_that_nothing_in_play_raises(
      @ForAll("fittings") ObjectNode given) {
    Fitting fitting = Answering.read(given);
    Conclusions said = Answering.consult(Answering.facts(fitting));
    List<Seen> seen = PLAIN.seen(fitting, said);
    Answer answer = Answering.DIAGNOSIS.answer(fitting);
    Set<String> byOne = new HashSet<>(Answering.BOOK.catalog().signs().keySet());
    answer
        .causes()
        .forEach(one -> byOne.retainAll(PLAIN.unexplained(seen, said, Set.of(one.id()))));
    // The rules' few words make exact ties common; rounding may break them either way.
    Set<Set<String>> plain =
        PLAIN.weigh(seen, said).likeliest().stream()
            .map(likeliest -> new HashSet<>(PLAIN.unexplained(seen, said, likeliest)))
            .peek(left -> left.retainAll(answer.noFault() == null ? byOne : Set.of()))
            .collect(Collectors.toSet());
    Set<String> answered =
        answer.unexplained().stream().map(SignNote::id).collect(Collectors.toSet());
    assertTrue(plain.contains(answered), () -> answered + " is none of " + plain);
  }

  @Provide
  Arbitrary<ObjectNode> fittings() {
    return FittingArbitrary.withoutDanger();
  }
}
