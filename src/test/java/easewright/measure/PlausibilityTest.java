package easewright.measure;

import static easewright.measure.Remark.Kind.IMPOSSIBLE;
import static easewright.measure.Remark.Kind.UNLIKELY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.RuleBookSource;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

// Survey: 2208 women, Gordon et al. 1989, 1988 Anthropometric Survey of US Army Personnel,
// NATICK/TR-89/044; statistics and 0.5 to 99.5 % windows computed from its data.
class PlausibilityTest {
  private static final Plausibility PLAUSIBILITY = RuleBookSource.compiledIn().plausibility();
  private static final double MEAN_BUST = 907.1;
  private static final double MEAN_UNDERBUST = 769.7;

  @Test
  void the_surveys_mean_body_raises_no_remark() {
    BodyMeasurements mean =
        body(
            Map.of(
                "bust", mm(MEAN_BUST),
                "underbust", mm(MEAN_UNDERBUST),
                "upperChest", mm(887),
                "bustPointWidth", mm(184.8),
                "shoulderToBustPoint", mm(268),
                "shoulderToUnderbust", mm(340)));
    assertEquals(List.of(), PLAUSIBILITY.check(mean));
  }

  @Test
  void nothing_measured_raises_no_remark() {
    assertEquals(List.of(), PLAUSIBILITY.check(BodyMeasurements.NONE));
  }

  @ParameterizedTest
  @CsvSource({"1.086, 0", "1.084, 1", "1.29, 0", "1.306, 1"})
  void bust_over_underbust_is_judged_at_both_edges_of_its_window(double ratio, int remarks) {
    // An underbust at which the window of the difference, 63 to 229 mm, is wider than that of the
    // ratio.
    assertRemarks(remarks, "bust", "times the underbust", body(745 * ratio, 745));
  }

  // Where the ratio is inside its window, so that only the difference matters: 62 over 725 and 230
  // over 900 mm are ratios of 1.0855 and 1.256.
  @ParameterizedTest
  @CsvSource({"725, 63, 0", "725, 62, 1", "900, 229, 0", "900, 230, 1"})
  void bust_less_underbust_is_judged_at_both_edges_of_its_window(
      double underbust, double difference, int remarks) {
    assertRemarks(remarks, "bust", "less the underbust", body(underbust + difference, underbust));
  }

  @ParameterizedTest
  @CsvSource({"1.063, 0", "1.061, 1", "1.259, 0", "1.261, 1"})
  void upper_chest_over_underbust_is_judged_at_both_edges(double ratio, int remarks) {
    BodyMeasurements body = body(Map.of("underbust", mm(780), "upperChest", mm(780 * ratio)));
    assertRemarks(remarks, "upperChest", "times the underbust", body);
  }

  @ParameterizedTest
  @CsvSource({"0.899, 0", "0.897, 1", "1.054, 0", "1.056, 1"})
  void upper_chest_over_bust_is_judged_at_both_edges(double ratio, int remarks) {
    BodyMeasurements body = body(Map.of("bust", mm(900), "upperChest", mm(900 * ratio)));
    assertRemarks(remarks, "upperChest", "times the bust", body);
  }

  @ParameterizedTest
  @CsvSource({"0.163, 0", "0.161, 1", "0.244, 0", "0.246, 1"})
  void bust_point_width_over_bust_is_judged_at_both_edges(double ratio, int remarks) {
    BodyMeasurements body = body(Map.of("bust", mm(900), "bustPointWidth", mm(900 * ratio)));
    assertRemarks(remarks, "bustPointWidth", "times the bust", body);
  }

  @Test
  void half_the_bust_point_width_is_named_as_the_slip() {
    BodyMeasurements body = body(Map.of("bust", mm(907), "bustPointWidth", mm(92)));
    assertTrue(only(body).remedy().contains("one bust point only"));
  }

  @Test
  void an_upper_chest_below_the_underbust_is_unlikely_and_not_impossible() {
    BodyMeasurements body = body(Map.of("underbust", mm(850), "upperChest", mm(840)));
    assertEquals(UNLIKELY, only(body).kind());
  }

  @Test
  void an_underbust_far_above_the_bust_was_swapped_with_it() {
    Remark remark = only(body(770, 907));
    assertEquals(IMPOSSIBLE, remark.kind());
    assertEquals("underbust", remark.field());
    assertTrue(remark.remedy().contains("swapped"), remark.remedy());
  }

  @ParameterizedTest
  @CsvSource({"900, 900", "900, 908"})
  void an_underbust_like_the_bust_is_the_same_place_measured_twice(double bust, double under) {
    Remark remark = only(body(bust, under));
    assertEquals(IMPOSSIBLE, remark.kind());
    assertTrue(remark.remedy().contains("measured twice"), remark.remedy());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "84 in | 84 cm",
        "34 cm | 34 in",
        "860 cm | 860 mm",
        "86 mm | 86 cm",
        "34 1/2 cm | 34.5 in",
        "907 in | 907 mm",
        "35 mm | 35 in",
        "0.9 cm | -"
      })
  void a_bust_out_of_all_range_names_the_unit_probably_meant(String written, String meant) {
    Remark remark = only(body(Map.of("bust", measured(written))));
    assertEquals(IMPOSSIBLE, remark.kind());
    assertEquals("bust", remark.field());
    boolean named = remark.remedy().contains("is probably " + meant);
    assertEquals(!meant.equals("-"), named, remark.remedy());
  }

  @Test
  void an_impossible_value_is_not_also_compared_with_others() {
    Remark remark = only(body(Map.of("bust", measured("84 in"), "underbust", measured("70 cm"))));
    assertEquals(IMPOSSIBLE, remark.kind());
  }

  @Test
  void fifty_inches_written_as_centimetres_is_asked_about() {
    Remark remark = only(body(Map.of("bust", measured("58 cm"))));
    assertEquals(UNLIKELY, remark.kind());
    assertTrue(remark.remedy().contains("was 58 in meant"), remark.remedy());
  }

  @ParameterizedTest
  @CsvSource({"bust, 711", "underbust, 640", "upperChest, 753"})
  void the_least_girth_of_the_survey_raises_no_remark_and_a_millimetre_less_does(
      String field, double least) {
    assertEquals(List.of(), PLAUSIBILITY.check(single(field, least)));
    assertEquals(field, only(single(field, least - 1)).field());
  }

  @Test
  void large_bodies_within_the_windows_raise_no_remark() {
    assertEquals(List.of(), PLAUSIBILITY.check(body(1500, 1280)));
  }

  @Test
  void a_remark_states_the_window_in_the_askers_units() {
    Remark inches = only(body(Map.of("bust", measured("46 in"), "underbust", measured("36 in"))));
    assertTrue(inches.problem().contains("between 2 1/2 in and 9 in"), inches.problem());
    Remark metric = only(body(1170, 920));
    assertTrue(metric.problem().contains("between 63 mm and 22.9 cm"), metric.problem());
  }

  @Test
  void impossible_remarks_come_first() {
    BodyMeasurements body =
        body(
            Map.of(
                "bust",
                mm(907),
                "bustPointWidth",
                mm(92),
                "shoulderToBustPoint",
                measured("27 in")));
    List<Remark> remarks = PLAUSIBILITY.check(body);
    assertEquals(List.of(IMPOSSIBLE, UNLIKELY), remarks.stream().map(Remark::kind).toList());
  }

  @Test
  void shoulder_lengths_in_reverse_order_are_asked_about() {
    BodyMeasurements body =
        body(Map.of("shoulderToBustPoint", mm(340), "shoulderToUnderbust", mm(268)));
    assertEquals("shoulderToUnderbust", only(body).field());
    assertEquals(UNLIKELY, only(body).kind());
  }

  private static void assertRemarks(int count, String field, String says, BodyMeasurements body) {
    List<Remark> remarks = PLAUSIBILITY.check(body);
    assertEquals(count, remarks.size(), remarks::toString);
    for (Remark remark : remarks) {
      assertEquals(field, remark.field());
      assertEquals(UNLIKELY, remark.kind());
      assertTrue(remark.problem().contains(says), remark.problem());
      assertFalse(remark.remedy().isBlank());
    }
  }

  private static Remark only(BodyMeasurements body) {
    List<Remark> remarks = PLAUSIBILITY.check(body);
    assertEquals(1, remarks.size(), remarks::toString);
    return remarks.get(0);
  }

  private static BodyMeasurements single(String field, double mm) {
    return body(Map.of(field, mm(mm)));
  }

  private static BodyMeasurements body(double bust, double underbust) {
    return body(Map.of("bust", mm(bust), "underbust", mm(underbust)));
  }

  private static BodyMeasurements body(Map<String, Measured> measured) {
    return new BodyMeasurements(measured);
  }

  private static Measured mm(double mm) {
    return new Measured(Length.ofMm(mm), 5);
  }

  private static Measured measured(String text) {
    return Measured.of(Quantity.parse(text), MeasuringMethod.TAPE_SELF.girthSdMm());
  }
}
