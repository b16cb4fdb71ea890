package easewright.body;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class WedgeTest {

  // An equilateral triangle has angles of 60° (geometry).
  @Test
  void aWedgeAsWideAsItIsLongHasSixtyDegrees() {
    assertEquals(60, new Wedge(50, 50).angleDegrees(), 1e-9);
  }

  @Test
  void aPinchAtTheLimitStaysOneWedgeAndAHairMoreIsSpreadOverTwo() {
    assertEquals(List.of(new Wedge(12, 150)), new Wedge(12, 150).spread(12));
    List<Wedge> spread = new Wedge(12.5, 150).spread(12);
    assertEquals(2, spread.size());
    assertEquals(12.5, spread.stream().mapToDouble(Wedge::pinchMm).sum(), 1e-12);
  }

  @Test
  void aPinchBeyondTwiceTheLimitIsNoWedgeAtAll() {
    assertEquals(2, new Wedge(24, 150).spread(12).size());
    assertTrue(new Wedge(24.5, 150).spread(12).isEmpty());
  }

  @Test
  void aPinchWiderThanItsReachIsRefused() {
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new Wedge(60, 50))
            .getMessage()
            .contains("wider"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new Wedge(0, 50))
            .getMessage()
            .contains("above zero"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new Wedge(5, 50).spread(0))
            .getMessage()
            .contains("limit"));
  }
}
