package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.cloth.Layers;
import easewright.cloth.Layers.Layer;
import easewright.diagnosis.Formula.Worked;
import easewright.measure.Measured;
import easewright.wording.Blanks;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Figures about the cloth of the band. Cloth and elastic are stretched over the same girth, so
 * their tensions add (Laplace).
 */
final class BandClothFormulas {
  private BandClothFormulas() {}

  /**
   * Tension of the band's cloth in wear, N per cm of height, taken as proportional to how far it is
   * stretched, with the pull of two hands at the stretch that was tested. Empty where nothing tells
   * how long the cloth is, or it is not stretched. Cloth at its end pulls harder than this.
   */
  static Optional<Worked> tension(FittingNumbers n) {
    Optional<Double> cloth = n.draft().bandClothMm();
    double girth = n.fitting().body().underbust().value().mm();
    double strain = cloth.map(mm -> girth / mm - 1).orElse(0.0);
    List<Layer> stretching = layers(n);
    if (!(strain > 0) || stretching.isEmpty()) {
      return Optional.empty();
    }
    Layers layers = new Layers(stretching);
    double tension = layers.tensionNPerCm(Math.min(strain, layers.stretch().value())).orElseThrow();
    return Optional.of(
        new Worked(
            new Estimate(tension, tension * n.parameter("hand-pull-error")),
            Blanks.of("cloth", n.shown().length(cloth.orElseThrow()))
                .and("strain", n.shown().percent(strain))
                .and("layers", layers.layers().size())
                .and("pull", n.shown().value(n.parameter("hand-pull"), "N/cm"))));
  }

  /** The outer cloth, and a lining that was tested and lies in the band. */
  private static List<Layer> layers(FittingNumbers n) {
    double pull = n.parameter("hand-pull");
    return Stream.of("main", "lining")
        .filter(role -> role.equals("main") || n.draft().isInTheBand(role))
        .map(LayerFigure.STRETCH_AROUND::of)
        .filter(layer -> layer.isGiven(n) && n.figure(layer.id()).value() > 0)
        .map(layer -> layer(layer, n.figure(layer.id()), pull))
        .toList();
  }

  private static Layer layer(LayerFigure.OfLayer layer, Estimate stretch, double pull) {
    return new Layer(layer.role(), stretch, pull / stretch.value());
  }

  /** How much of the stretch that the cloth has is used up in wear. */
  static Optional<Worked> stretchUsed(FittingNumbers n) {
    Measured under = n.fitting().body().underbust();
    double cloth = n.fitting().garment().bandCloth().mm();
    Estimate stretch = n.figure(LayerFigure.STRETCH_AROUND.of("main").id());
    if (!(stretch.value() > 0)) {
      return Optional.empty();
    }
    double strain = under.value().mm() / cloth - 1;
    double used = strain / stretch.value();
    return Optional.of(
        new Worked(
            Estimate.of(
                used,
                under.sdMm() / cloth / stretch.value(),
                n.draft().garmentErrorMm() / cloth / stretch.value(),
                used * stretch.sd() / stretch.value()),
            Blanks.of("underbust", under.text())
                .and("cloth", n.shown().length(cloth))
                .and("strain", n.shown().percent(strain))
                .and("stretch", n.shown().percent(stretch.value()))));
  }

  /** Length of the elastic without its join, in parts of the cloth it was put on. */
  static Worked elasticShare(FittingNumbers n) {
    double cut = n.fitting().bandElasticCut().mm();
    double joining = n.parameter("elastic-joining");
    double cloth = n.fitting().garment().bandCloth().mm();
    return new Worked(
        Estimate.of(
            (cut - joining) / cloth,
            n.parameter("elastic-cut-error") / cloth,
            n.draft().garmentErrorMm() / cloth),
        Blanks.of("cut", n.shown().length(cut))
            .and("joining", n.shown().length(joining))
            .and("cloth", n.shown().length(cloth)));
  }
}
