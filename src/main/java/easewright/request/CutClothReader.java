package easewright.request;

import easewright.measure.ArealWeight;
import easewright.measure.Length;
import easewright.measure.Percent;
import easewright.measure.Quantity;
import easewright.measure.Rounded;
import easewright.pattern.Cut;
import easewright.pattern.Layer;
import easewright.plan.Cloth;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Reads the cloths that the layers of a cut plan are cut from. */
final class CutClothReader {
  private static final List<String> LAYERS = List.of("main", "lining", "support");

  private CutClothReader() {}

  /**
   * The cloths by layer.
   *
   * @param cut the pieces to cut; null if they are not known
   * @param cutFrom layers cut from another layer's cloth, added to
   */
  static Map<Layer, Cloth> cloths(RequestField spot, Cut cut, Map<Layer, Layer> cutFrom) {
    spot = spot.fields(LAYERS.toArray(String[]::new));
    Map<Layer, Cloth> cloths = new EnumMap<>(Layer.class);
    for (String name : LAYERS) {
      Layer layer = layer(name);
      RequestField cloth =
          spot.at(name).fields("width", "laid", "nap", "stretch", "shrinkage", "weight", "cutFrom");
      if (!cloth.isWritten()) {
        continue;
      }
      if (cut != null && cut.pieces().stream().noneMatch(piece -> piece.layer() == layer)) {
        cloth.cannotBe("fault-cloth-not-cut");
      }
      if (cloth.at("cutFrom").isWritten()) {
        String from =
            cloth.at("cutFrom").oneOf(LAYERS.stream().filter(l -> !l.equals(name)).toList());
        if (from != null) {
          cutFrom.put(layer, layer(from));
        }
        if (cloth.node().size() > 1 || from != null && spot.at(from).at("cutFrom").isWritten()) {
          cloth.cannotBe("fault-cloth-cut-from-another");
        }
      } else {
        cloth(cloth, cloths, layer);
      }
    }
    return cloths;
  }

  private static void cloth(RequestField spot, Map<Layer, Cloth> cloths, Layer layer) {
    if (!spot.at("width").isWritten()) {
      spot.at("width").needs("fault-width-missing");
    }
    if (!spot.at("stretch").isWritten()) {
      spot.at("stretch").needs("fault-stretch-missing");
    }
    Length width = spot.at("width").length("narrowest-cloth", "widest-cloth");
    String laid = spot.at("laid").oneOf(List.of("folded", "open", "either"));
    boolean nap = "one-way".equals(spot.at("nap").oneOf(List.of("none", "one-way")));
    String stretch = spot.at("stretch").oneOf(List.of("crosswise", "lengthwise", "both"));
    Percent shrinkage = spot.at("shrinkage").quantity(Quantity::percent);
    double most = spot.faults().words().bound("greatest-shrinkage");
    boolean shrinks = shrinkage != null && shrinkage.fraction() > most;
    if (shrinks) {
      spot.at("shrinkage").cannotBe("fault-shrinkage", "most", Rounded.text(most * 100, 0) + " %");
    }
    ArealWeight weight = spot.at("weight").quantity(Quantity::arealWeight);
    if (width != null && stretch != null && !shrinks) {
      cloths.put(
          layer,
          new Cloth(
              width.mm(),
              laid == null ? Cloth.Lay.EITHER : Cloth.Lay.valueOf(laid.toUpperCase(Locale.ROOT)),
              nap,
              Cloth.GreatestStretch.valueOf(stretch.toUpperCase(Locale.ROOT)),
              shrinkage == null ? null : shrinkage.fraction(),
              weight));
    }
  }

  private static Layer layer(String name) {
    return Layer.valueOf(name.toUpperCase(Locale.ROOT));
  }
}
