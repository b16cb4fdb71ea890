package easewright.cloth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

// Margins are plain differences; the expected numbers are subtracted by hand.
class ClothVerdictTest {

  private final ClothNeed need = new ClothNeed(0.6, 0.4, 0.9, 200.0, 280.0, new StretchUse(0.2));

  @Test
  void a_cloth_short_of_stretch_has_a_negative_margin_with_the_error_of_its_test() {
    StretchTest around = new StretchTest(100, 155, 103.0);
    ClothVerdict verdict =
        ClothVerdict.of(new ClothTest(around, new StretchTest(100, 150, null)), need, 210.0);
    assertEquals(-0.05, verdict.around().value(), 1e-12);
    assertEquals(around.stretch().sd(), verdict.around().sd());
    assertEquals(0.1, verdict.along().orElseThrow().value(), 1e-12);
    assertEquals(52.0 / 55 - 0.9, verdict.recovery().orElseThrow().value(), 1e-12);
    assertEquals(10, verdict.weightGsm().orElseThrow(), 1e-12);
    assertEquals(1.12 / 1.11, verdict.widthFactor().value(), 1e-12);
  }

  @Test
  void a_cloth_heavier_than_the_window_lies_outside_by_the_excess() {
    ClothTest test = new ClothTest(new StretchTest(100, 160, null), null);
    assertEquals(-20, ClothVerdict.of(test, need, 300.0).weightGsm().orElseThrow(), 1e-12);
  }

  @Test
  void what_was_not_tested_has_no_margin() {
    ClothTest test = new ClothTest(new StretchTest(100, 160, null), null);
    ClothVerdict verdict = ClothVerdict.of(test, need, null);
    assertTrue(verdict.along().isEmpty());
    assertTrue(verdict.recovery().isEmpty());
    assertTrue(verdict.weightGsm().isEmpty());
  }

  @Test
  void a_need_no_cloth_can_meet_is_refused() {
    StretchUse use = new StretchUse(0.2);
    assertTrue(
        assertThrows(
                IllegalArgumentException.class,
                () -> new ClothNeed(-0.1, 0.0, null, null, null, use))
            .getMessage()
            .contains("stretch"));
    assertTrue(
        assertThrows(
                IllegalArgumentException.class, () -> new ClothNeed(0.1, 0.0, 1.2, null, null, use))
            .getMessage()
            .contains("recovery"));
    assertTrue(
        assertThrows(
                IllegalArgumentException.class,
                () -> new ClothNeed(0.1, 0.0, null, 300.0, 200.0, use))
            .getMessage()
            .contains("heavier"));
    assertTrue(
        assertThrows(
                IllegalArgumentException.class, () -> new ClothNeed(0.1, 0.0, null, 0.0, null, use))
            .getMessage()
            .contains("weight"));
    assertTrue(
        assertThrows(
                IllegalArgumentException.class,
                () -> new ClothNeed(0.1, 0.0, null, null, null, null))
            .getMessage()
            .contains("used"));
  }
}
