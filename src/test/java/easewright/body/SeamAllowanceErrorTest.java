package easewright.body;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SeamAllowanceErrorTest {

  private static final double INCH = 25.4;

  // Common practice: four seams sewn at 1/4 in instead of 3/8 in make a garment one inch larger.
  @Test
  void fourSeamsSewnAtAQuarterInchInsteadOfThreeEighthsAddOneInch() {
    assertEquals(INCH, new SeamAllowanceError(4, 3 * INCH / 8, INCH / 4).girthChangeMm(), 1e-9);
  }

  // Computed: 15 mm for 5/8 in loses 0.9 mm an edge, 3.5 mm on four edges.
  @Test
  void fifteenMillimetresSewnAsFiveEighthsOfAnInchTakeThreeAndAHalfFromFourEdges() {
    assertEquals(-3.5, new SeamAllowanceError(2, 15, 5 * INCH / 8).girthChangeMm(), 0.01);
  }

  @Test
  void aGirthWithoutSeamsAndNegativeAllowancesAreRefused() {
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
