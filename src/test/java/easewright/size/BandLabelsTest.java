package easewright.size;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class BandLabelsTest {

  // Row 73–77 cm of the band table in an encyclopaedia.
  @ParameterizedTest
  @CsvSource({"EU, 75", "FR, 90", "IT, 3", "UK, 34", "US, 34"})
  void the_band_of_73_to_77_centimetres_has_a_label_in_each_region(BandLabels region, int label) {
    assertEquals(label, region.ofEu(75));
    assertEquals(75, region.toEu(label));
  }

  @ParameterizedTest
  @EnumSource
  void every_band_comes_back_from_its_label(BandLabels region) {
    for (int band = 60; band <= 150; band += 5) {
      assertEquals(band, region.toEu(region.ofEu(band)));
    }
  }

  @Test
  void a_label_no_band_has_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> BandLabels.UK.toEu(33));
    assertThrows(IllegalArgumentException.class, () -> BandLabels.UK.toEu(26));
    assertThrows(IllegalArgumentException.class, () -> BandLabels.IT.toEu(19));
    assertThrows(IllegalArgumentException.class, () -> BandLabels.EU.ofEu(72));
  }
}
