package easewright.body;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SeamAllowanceErrorTest {

  private static final double INCH = 25.4;

  // Common practice: four seams sewn at 1/4 in instead of 3/8 in make a garment one inch larger.
  @Test
  void four_seams_sewn_at_a_quarter_inch_instead_of_three_eighths_add_one_inch() {
    assertEquals(INCH, new SeamAllowanceError(4, 3 * INCH / 8, INCH / 4).girthChangeMm(), 1e-9);
  }

  // Computed: 15 mm for 5/8 in loses 0.9 mm per edge, 3.5 mm on four edges.
  @Test
  void fifteen_millimetres_sewn_as_five_eighths_of_an_inch_take_three_and_a_half_from_four_edges() {
    assertEquals(-3.5, new SeamAllowanceError(2, 15, 5 * INCH / 8).girthChangeMm(), 0.01);
  }

  @Test
  void a_girth_without_seams_and_negative_allowances_are_refused() {
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new SeamAllowanceError(0, 10, 6))
            .getMessage()
            .contains("seam"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new SeamAllowanceError(2, -1, 6))
            .getMessage()
            .contains("allowance"));
  }
}
