package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer.SignNote;
import easewright.fitting.EarlierAdjustment;
import easewright.fitting.Fitting;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;

/** The order in which things are reported is no evidence, so an answer does not depend on it. */
class OrderOfReportingTest {

  @Property(tries = 1500, shrinking = ShrinkingMode.BOUNDED)
  void signs_earlier_changes_and_choices_in_another_order_get_the_same_answer(
      @ForAll("fittings") ObjectNode given, @ForAll Random random) {
    Fitting fitting = Answering.read(given);
    Fitting other = Answering.withSigns(fitting, shuffled(fitting.signs(), random));
    other = Answering.withEarlier(other, lastOfEachLast(fitting.earlier(), random));
    Map<String, String> choices = new LinkedHashMap<>();
    shuffled(List.copyOf(fitting.choices().keySet()), random)
        .forEach(choice -> choices.put(choice, fitting.choices().get(choice)));
    other = Answering.withChoices(other, choices);
    Answer one = Answering.DIAGNOSIS.answer(fitting);
    Answer two = Answering.DIAGNOSIS.answer(other);
    assertEquals(one.causes(), two.causes());
    assertEquals(one.nothingWrong(), two.nothingWrong());
    assertEquals(one.findings(), two.findings());
    assertEquals(one.cautions(), two.cautions());
    assertEquals(one.adjustments(), two.adjustments());
    assertEquals(one.heldBack(), two.heldBack());
    assertEquals(one.questions(), two.questions());
    assertEquals(set(one.unexplained()), set(two.unexplained()));
    assertEquals(one.missing(), two.missing());
  }

  private static <T> List<T> shuffled(List<T> list, Random random) {
    List<T> other = new ArrayList<>(list);
    Collections.shuffle(other, random);
    return other;
  }

  /**
   * Among several tries of one change the last counts, so these keep their order; and the change
   * made last, which alone can be put back, stays last.
   */
  private static List<EarlierAdjustment> lastOfEachLast(
      List<EarlierAdjustment> earlier, Random random) {
    Set<String> ids = new HashSet<>();
    boolean distinct = earlier.stream().allMatch(one -> ids.add(one.adjustment()));
    if (!distinct || earlier.isEmpty()) {
      return earlier;
    }
    int last = earlier.size() - 1;
    List<EarlierAdjustment> other = shuffled(earlier.subList(0, last), random);
    other.add(earlier.get(last));
    return other;
  }

  private static Set<SignNote> set(List<SignNote> signs) {
    return new HashSet<>(signs);
  }

  @Provide
  Arbitrary<ObjectNode> fittings() {
    return FittingArbitrary.any();
  }
}
