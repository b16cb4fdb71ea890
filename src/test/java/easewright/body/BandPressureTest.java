package easewright.body;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BandPressureTest {

  // Computed from P = 2πT/C: kPa, mmHg, then N per cm of band height at 65, 75, 85 and 95 cm.
  @ParameterizedTest
  @CsvSource({
    "0.5, 3.8, 0.52, 0.60, 0.68, 0.76",
    "1.0, 7.5, 1.03, 1.19, 1.35, 1.51",
    "1.5, 11.3, 1.55, 1.79, 2.03, 2.27",
    "2.0, 15.0, 2.07, 2.39, 2.71, 3.02",
    "2.5, 18.8, 2.59, 2.98, 3.38, 3.78",
    "3.0, 22.5, 3.10, 3.58, 4.06, 4.54",
    "4.0, 30.0, 4.14, 4.77, 5.41, 6.05"
  })
  void aMeanPressureNeedsTheTensionOfTheTable(
      double kPa, double mmHg, double at65, double at75, double at85, double at95) {
    double[] tensions = {at65, at75, at85, at95};
    for (int i = 0; i < tensions.length; i++) {
      double girthMm = 650 + 100 * i;
      BandPressure band = BandPressure.ofKPa(kPa, girthMm);
      assertEquals(tensions[i], band.tensionNPerCm(), 0.0051);
      assertEquals(kPa, band.kPa(), 1e-9);
      assertEquals(mmHg, band.mmHg(), 0.051);
      assertEquals(kPa, new BandPressure(tensions[i], girthMm).kPa(), 0.006);
    }
  }

  // 1 kPa = 7.50 mmHg, and 1 N/cm² = 10 kPa = 75 mmHg (SI brochure; rounded).
  @Test
  void kilopascals_and_millimetres_of_mercury_convert() {
    assertEquals(7.50, BandPressure.toMmHg(1), 0.005);
    assertEquals(10, BandPressure.toKPa(75), 0.005);
  }

  // An ellipse of 28 × 24 cm has radii b²/a = 10.3 cm at its sides and a²/b = 16.3 cm front and
  // back (geometry); 818 mm around by Ramanujan's formula. So about 1.25 and 0.8 of the mean.
  @Test
  void an_oval_trunk_is_pressed_more_at_the_sides_than_front_and_back() {
    BandPressure band = BandPressure.ofKPa(2, 818);
    assertEquals(1.25, band.kPaWhereRadiusIs(103) / band.kPa(), 0.02);
    assertEquals(0.8, band.kPaWhereRadiusIs(163) / band.kPa(), 0.02);
  }

  @Property
  void the_same_tension_presses_a_smaller_body_more(
      @ForAll @DoubleRange(min = 0.1, max = 8) double tension,
      @ForAll @DoubleRange(min = 600, max = 1200) double girth) {
    assertTrue(
        new BandPressure(tension, girth).kPa() > new BandPressure(tension, girth + 10).kPa());
  }

  @Test
  void a_band_that_pushes_is_refused() {
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new BandPressure(-1, 750))
            .getMessage()
            .contains("tension"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new BandPressure(1, 0))
            .getMessage()
            .contains("girth"));
    assertTrue(
        assertThrows(
                IllegalArgumentException.class, () -> new BandPressure(1, 750).kPaWhereRadiusIs(0))
            .getMessage()
            .contains("radius"));
  }
}
