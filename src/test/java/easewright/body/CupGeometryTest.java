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

class CupGeometryTest {

  // Hemisphere: V = 2/3·πr³, arc over the top πr (solid geometry).
  @Test
  void a_cup_as_deep_as_half_its_base_is_a_hemisphere() {
    CupGeometry cup = new CupGeometry(120, 60);
    assertEquals(2.0 / 3 * Math.PI * 216, cup.volumeMl(), 1e-9);
    assertEquals(Math.PI * 60, cup.arcMm(), 1e-9);
  }

  // Flat limit: arc ≈ w + 8h²/3w and V ≈ πa²h/2 (series of the circular segment).
  @Test
  void a_nearly_flat_cup_follows_the_series_of_the_circular_segment() {
    CupGeometry cup = new CupGeometry(100, 1);
    assertEquals(8.0 / 300, cup.arcMm() - 100, 1e-5);
    assertEquals(Math.PI * 2500 / 2 / 1000, cup.volumeMl(), 2e-3);
  }

  // Full sphere: as depth grows the arc approaches the sphere's circumference, the volume 4/3·πR³.
  @Test
  void a_deep_cup_nears_the_whole_ball() {
    CupGeometry cup = new CupGeometry(100, 150);
    double radius = (50 * 50 + 150 * 150) / 300.0;
    double cutOff = Math.PI * Math.pow(2 * radius - 150, 2) * (3 * radius - (2 * radius - 150)) / 3;
    assertEquals((4.0 / 3 * Math.PI * Math.pow(radius, 3) - cutOff) / 1000, cup.volumeMl(), 1e-6);
    assertEquals(2 * Math.PI * radius - 2 * radius * Math.asin(50 / radius), cup.arcMm(), 1e-6);
  }

  @Property
  void a_cup_found_from_its_girth_difference_has_that_difference(
      @ForAll @DoubleRange(min = 80, max = 200) double base,
      @ForAll @DoubleRange(min = 1, max = 240) double difference) {
    assertEquals(difference, CupGeometry.fromDifference(base, difference).differenceMm(), 1e-6);
  }

  @Property
  void more_difference_on_one_base_is_a_deeper_and_larger_cup(
      @ForAll @DoubleRange(min = 80, max = 200) double base,
      @ForAll @DoubleRange(min = 5, max = 230) double difference) {
    CupGeometry cup = CupGeometry.fromDifference(base, difference);
    CupGeometry next = CupGeometry.fromDifference(base, difference + 5);
    assertTrue(next.projectionMm() > cup.projectionMm());
    assertTrue(next.volumeMl() > cup.volumeMl());
  }

  // Slopes against central differences (numerical analysis).
  @Property
  void arc_and_projection_move_as_their_slopes_say(
      @ForAll @DoubleRange(min = 80, max = 200) double base,
      @ForAll @DoubleRange(min = 20, max = 230) double difference) {
    CupGeometry cup = CupGeometry.fromDifference(base, difference);
    CupGeometry less = CupGeometry.fromDifference(base, difference - 0.1);
    CupGeometry more = CupGeometry.fromDifference(base, difference + 0.1);
    assertEquals(
        cup.projectionPerDifference(),
        (more.projectionMm() - less.projectionMm()) / 0.2,
        0.001 * Math.abs(cup.projectionPerDifference()));
    assertEquals(
        cup.arcPerDifference(),
        (more.arcMm() - less.arcMm()) / 0.2,
        0.001 * Math.abs(cup.arcPerDifference()));
  }

  // Hemispheres on wire bases: 9.7 cm at wire 30 and 1/3 in more per size; volumes of wire 30 to 34
  // as in an encyclopaedic table, the rest computed; all rounded to two or three figures.
  @ParameterizedTest
  @CsvSource({
    "30, 9.7, 240",
    "32, 10.5, 310",
    "34, 11.4, 390",
    "36, 12.2, 480",
    "38, 13.1, 590",
    "40, 13.9, 710",
    "42, 14.8, 845",
    "44, 15.6, 1000",
    "46, 16.5, 1170",
    "48, 17.3, 1360",
    "50, 18.2, 1570",
    "52, 19.0, 1800",
    "54, 19.9, 2050"
  })
  void aHemisphereOnAWireBaseHasTheVolumeOfItsSize(int wire, double baseCm, double ml) {
    double baseMm = 97 + 25.4 / 3 * (wire - 30) / 2;
    assertEquals(baseCm, baseMm / 10, 0.06);
    assertEquals(ml, new CupGeometry(baseMm, baseMm / 2).volumeMl(), 0.025 * Math.abs(ml));
  }

  // Sister sizes, EN 13402-3 nominal differences (70C 17, 75B 15, 80A 13 cm): equal volumes are a
  // convention of the trade. Base: the wire 34 of 75B, 11.4 cm, in proportion to the band.
  @Test
  void sister_sizes_have_like_volumes_and_the_next_cup_has_not() {
    double cup75B = enVolumeMl(750, 150);
    assertEquals(cup75B, enVolumeMl(700, 170), 0.05 * Math.abs(cup75B));
    assertEquals(cup75B, enVolumeMl(800, 130), 0.05 * Math.abs(cup75B));
    assertTrue(enVolumeMl(750, 170) > 1.1 * cup75B);
  }

  private static double enVolumeMl(double bandMm, double differenceMm) {
    return CupGeometry.fromDifference(114 * bandMm / 750, differenceMm).volumeMl();
  }

  @Test
  void cups_the_model_cannot_shape_are_refused() {
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> CupGeometry.fromDifference(80, 520))
            .getMessage()
            .contains("narrow"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> CupGeometry.fromDifference(80, 0))
            .getMessage()
            .contains("above zero"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new CupGeometry(80, 121))
            .getMessage()
            .contains("deeper"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new CupGeometry(80, 0))
            .getMessage()
            .contains("above zero"));
  }
}
