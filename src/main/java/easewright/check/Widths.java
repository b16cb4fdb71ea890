package easewright.check;

import easewright.check.ClothAnswer.LayerNote;
import easewright.check.ClothAnswer.WidthNote;
import easewright.diagnosis.UnitFormatter;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The effect of the cloths on the draft's widths, which all layers share. */
final class Widths {
  private final RuleBookSource source;
  private final Wording wording;
  private final UnitFormatter shown;

  Widths(RuleBookSource source, UnitFormatter shown) {
    this.source = source;
    this.wording = source.wording();
    this.shown = shown;
  }

  /**
   * The widths to cut; empty if no layer has a requirement.
   *
   * @param nothingTighter whether widths must not become narrower than drafted
   */
  Optional<WidthNote> of(List<LayerNote> layers, boolean nothingTighter) {
    return layers.stream()
        .filter(layer -> layer.widthFactor() != null)
        .max(Comparator.comparingDouble(LayerNote::widthFactor))
        .map(layer -> note(layer, nothingTighter));
  }

  private WidthNote note(LayerNote layer, boolean nothingTighter) {
    double asked = layer.widthFactor() - 1;
    String advice = advice(asked, nothingTighter);
    double change = advice.equals("not-narrower") ? 0 : asked;
    return new WidthNote(
        layer.role(),
        1 + change,
        layer.widthFactorPlusMinus(),
        change,
        advice,
        wording.say(
            "width-" + advice,
            "layer",
            layer.role(),
            "change",
            shown.percent(Math.abs(change)),
            "way",
            wording.say(change > 0 ? "width-wider" : "width-narrower"),
            "limit",
            shown.percent(source.parameter("largest-width-change"))));
  }

  private String advice(double change, boolean nothingTighter) {
    if (nothingTighter && change < 0) {
      return "not-narrower";
    }
    if (Math.abs(change) > source.parameter("largest-width-change")) {
      return "other-cloth";
    }
    return Math.abs(change) < source.parameter("width-change-worth-making")
        ? "as-drafted"
        : "scale";
  }
}
