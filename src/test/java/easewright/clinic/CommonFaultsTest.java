package easewright.clinic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("long")
class CommonFaultsTest {
  private static final List<PatternSheet> SHEETS = new PatternSheets().shipped();
  private static final String LONG = "front-armhole-too-long";

  /** Fisher 1935, The Design of Experiments, chapter 2: four of eight cups had the milk first. */
  @Test
  void the_exact_test_gives_what_fisher_computed_for_the_tasting_of_tea() {
    assertEquals(1 / 70.0, RangeTest.fisher(8, 4, 4, 4), 1e-12);
    assertEquals(17 / 70.0, RangeTest.fisher(8, 4, 4, 3), 1e-12);
    assertEquals(1, RangeTest.fisher(8, 4, 4, 0), 1e-12);
  }

  private static CountedRound cut(String size, String cause) {
    return new CountedRound(false, true, "quillmere-top", size, cause, null, Map.of(), List.of());
  }

  private static List<CountedRound> planted() {
    List<CountedRound> cases = new ArrayList<>();
    String[] others = {"band-too-long", "straps-too-long", null, "cup-too-small"};
    for (int i = 0; i < 10; i++) {
      cases.add(cut(List.of("75D", "80E", "85D").get(i % 3), i == 4 ? "band-too-long" : LONG));
      cases.add(cut(List.of("75A", "80B", "85C").get(i % 3), i == 7 ? LONG : others[i % 4]));
    }
    return cases;
  }

  @Test
  void a_cause_that_nearly_all_of_the_two_largest_cups_have_is_a_fault_of_the_pattern() {
    List<CommonFault> faults = CommonFaults.in(planted(), SHEETS);
    assertEquals(1, faults.size());
    CommonFault fault = faults.get(0);
    assertEquals(LONG, fault.cause());
    assertEquals(SizeRange.Axis.CUP, fault.sizes().of());
    assertEquals(List.of("D", "E"), fault.sizes().labels());
    assertEquals("largest", fault.sizes().end());
    assertEquals(new Share(9, 10), fault.inside());
    assertEquals(new Share(1, 10), fault.elsewhere());
    assertTrue(fault.chance() > RangeTest.fisher(20, 10, 10, 9));
    assertEquals(faults, CommonFaults.in(planted(), SHEETS));
  }

  @Test
  void a_few_cases_alike_are_no_fault_of_the_pattern() {
    List<CountedRound> cases = new ArrayList<>(planted().subList(10, 20));
    cases.removeIf(one -> LONG.equals(one.cause()));
    for (int i = 0; i < 4; i++) {
      cases.add(cut("80E", LONG));
    }
    assertEquals(List.of(), CommonFaults.in(cases, SHEETS));
    assertEquals(List.of(), CommonFaults.in(List.of(), SHEETS));
  }

  /** The correction works as promised: a false alarm in at most one clinic in twenty. */
  @Test
  void with_random_causes_hardly_any_clinic_gets_a_fault_reported() {
    Random random = new Random(1927);
    int alarms = 0;
    for (int clinic = 0; clinic < 60; clinic++) {
      List<CountedRound> cases = new ArrayList<>();
      for (int i = 0; i < 40; i++) {
        int drawn = random.nextInt(6);
        cases.add(
            cut(
                "" + (65 + 5 * random.nextInt(7)) + "ABCDE".charAt(random.nextInt(5)),
                drawn < 2 ? LONG : drawn == 2 ? null : "cause-" + drawn));
      }
      alarms += CommonFaults.in(cases, SHEETS).isEmpty() ? 0 : 1;
    }
    // Of 60 at one in twenty, more than 8 occur less than once in a hundred times (binomial,
    // computed).
    assertTrue(alarms <= 8, alarms + " of 60");
  }
}
