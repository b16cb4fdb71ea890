package easewright.diagnosis;

import easewright.cloth.ClothTest;
import easewright.cloth.Estimate;
import easewright.cloth.StretchTest;
import easewright.diagnosis.Formula.Worked;
import easewright.fitting.ClothReport;
import easewright.wording.Blanks;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/**
 * A figure of one layer from its own stretch test, a fraction. The name in rules is the layer's
 * role, then the constant's in small letters with hyphens.
 */
enum LayerFigure {
  STRETCH_AROUND("figure-stretch", ClothTest::around, test -> Optional.of(test.stretch())),
  RECOVERY("figure-recovery", ClothTest::around, StretchTest::recovery),
  GROWTH("figure-growth", ClothTest::around, StretchTest::growth),
  STRETCH_ALONG("figure-stretch", ClothTest::along, test -> Optional.of(test.stretch()));

  /** The layers that have figures. */
  static final List<String> ROLES = List.of("main", "lining", "support");

  private final String inRules = name().toLowerCase(Locale.ROOT).replace('_', '-');
  private final String wording;
  private final Function<ClothTest, StretchTest> direction;
  private final Function<StretchTest, Optional<Estimate>> result;

  LayerFigure(
      String wording,
      Function<ClothTest, StretchTest> direction,
      Function<StretchTest, Optional<Estimate>> result) {
    this.wording = wording;
    this.direction = direction;
    this.result = result;
  }

  /**
   * The figure of one layer.
   *
   * @param id the name in rules
   */
  record OfLayer(LayerFigure figure, String role, String id) implements Input {
    @Override
    public boolean isGiven(FittingNumbers numbers) {
      return numbers.figures().containsKey(id);
    }

    Formula formula() {
      return Formula.trying(figure.wording, this::worked);
    }

    private Optional<Worked> worked(FittingNumbers numbers) {
      ClothReport cloth = numbers.fitting().cloths().get(role);
      StretchTest test =
          cloth == null || cloth.test() == null ? null : figure.direction.apply(cloth.test());
      if (test == null) {
        return Optional.empty();
      }
      UnitFormatter shown = numbers.shown();
      Blanks readings =
          Blanks.of("marked", shown.length(test.markedMm()))
              .and("stretched", shown.length(test.stretchedMm()))
              .and("relaxed", test.relaxedMm() == null ? "" : shown.length(test.relaxedMm()));
      return figure.result.apply(test).map(result -> new Worked(result, readings));
    }
  }

  OfLayer of(String role) {
    return new OfLayer(this, role, role + "-" + inRules);
  }
}
