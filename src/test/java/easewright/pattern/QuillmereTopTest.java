package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.cloth.Estimate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuillmereTopTest {

  private final PatternSheet sheet = new PatternSheets().find("quillmere-top").orElseThrow();

  // Worked examples of EN 13402-3 (from a secondary source): underbust, bust, designation.
  @ParameterizedTest
  @CsvSource({"870, 1070, 85D", "890, 1080, 90D", "820, 1000, 80C"})
  void a_body_of_the_standards_examples_is_one_its_designated_size_is_for(
      double underbust, double bust, String designation) {
    List<String> fitting =
        sheet.sizes().stream()
            .filter(size -> size.fits(underbust, bust))
            .map(PatternSize::name)
            .toList();
    assertEquals(List.of(designation), fitting);
  }

  // Negative ease of 8 to 12 % (common practice for close-fitting stretch tops).
  @Test
  void every_size_is_eight_to_twelve_percent_smaller_than_the_body_it_is_named_for() {
    for (PatternSize size : sheet.sizes()) {
      double underbust = size.underbustMm().orElseThrow().middleMm();
      double bust = underbust + size.differenceMm().orElseThrow();
      double bandEase = 1 - size.finishedMm().get("underband") / underbust;
      double bustEase = 1 - size.finishedMm().get("bust") / bust;
      assertTrue(bandEase >= 0.08 && bandEase <= 0.12, size.name() + " band " + bandEase);
      assertTrue(bustEase >= 0.07 && bustEase <= 0.12, size.name() + " bust " + bustEase);
      assertTrue(
          size.finishedMm().get("underband") < size.underbustMm().orElseThrow().fromMm(),
          size.name());
    }
  }

  // Reduction 1 − 1/(1 + u·s): the cloths required, used as stated, must reach the drafted ease.
  @Test
  void every_layer_asked_for_reaches_the_ease_of_the_draft() {
    double ease = 1 - 585.0 / 650;
    sheet
        .cloth()
        .forEach(
            (layer, need) ->
                assertEquals(
                    ease,
                    need.use().reduction(new Estimate(need.stretchAround(), 0)).value(),
                    0.01,
                    layer + " is drafted for another ease"));
  }

  // Bust-point width = 61.3 + 0.136·bust mm, residual SD 13.7 (computed from the US Army
  // anthropometric survey of 1988, Gordon et al., NATICK/TR-89/044).
  @Test
  void the_apexes_lie_where_most_bodies_have_theirs() {
    for (PatternSize size : sheet.sizes()) {
      double bust = size.underbustMm().orElseThrow().middleMm() + size.differenceMm().orElseThrow();
      double worn = size.finishedMm().get("bustPointWidth") * bust / size.finishedMm().get("bust");
      assertEquals(61.3 + 0.136 * bust, worn, 13.7, size.name());
    }
  }

  // An edge is as long as its parts (geometry), under every option.
  @ParameterizedTest
  @CsvSource({"rounded", "drawn-in"})
  void the_armhole_is_as_long_as_the_three_pieces_it_runs_over(String back) {
    for (PatternSize size : sheet.sizes()) {
      Map<String, Double> finished = sheet.finishedMm(size, Map.of("back", back));
      assertEquals(
          finished.get("frontArmhole") + finished.get("sideArmhole") + finished.get("backArmhole"),
          finished.get("armholeEdge"),
          1e-6,
          size.name());
    }
  }

  // Worn elastic extension of 10 to 30 % (common practice, with the limit at half its stretch).
  @Test
  void the_underband_elastic_is_worn_between_ten_and_thirty_percent_extension() {
    Trim elastic =
        sheet.trims(Map.of()).stream()
            .filter(trim -> trim.id().equals("underband-elastic"))
            .findFirst()
            .orElseThrow();
    for (PatternSize size : sheet.sizes()) {
      double joinedMm = elastic.lengthMm(size.finishedMm()).orElseThrow() - elastic.plusMm();
      for (double body :
          List.of(
              size.underbustMm().orElseThrow().fromMm(), size.underbustMm().orElseThrow().toMm())) {
        double extension = body / joinedMm - 1;
        assertTrue(extension >= 0.10 && extension <= 0.30, size.name() + " " + extension);
      }
    }
  }

  // The seam over the apex gains half the girth of a cup (arc of a spherical cap, computed).
  @Test
  void a_cup_more_raises_the_shaped_seam_by_half_of_what_it_adds_to_the_bust() {
    PatternSize b = sheet.size("75B").orElseThrow();
    PatternSize c = sheet.size("75C").orElseThrow();
    double girth = c.finishedMm().get("bust") - b.finishedMm().get("bust");
    double height = c.finishedMm().get("shapedSeam") - b.finishedMm().get("shapedSeam");
    assertEquals(girth / 2, height, 0.1);
  }
}
