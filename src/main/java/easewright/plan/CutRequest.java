package easewright.plan;

import easewright.measure.UnitSystem;
import easewright.pattern.Layer;
import easewright.pattern.PatternSheet;
import java.util.List;
import java.util.Map;

/**
 * A request for a cut plan.
 *
 * @param units how lengths are written in the plan
 * @param sheet the pattern
 * @param upperSize name of the size of everything above the underband
 * @param lowerSize name of the size of the underband; the same unless sizes are mixed
 * @param choices options by choice, the rest by default
 * @param cloths the cloth of each layer that has its own
 * @param cutFrom layers cut from the cloth of another layer
 * @param accepted changes from a fitting, in the order they were accepted
 * @param everything whether the whole garment is cut, or only what the changes ask for
 */
public record CutRequest(
    UnitSystem units,
    PatternSheet sheet,
    String upperSize,
    String lowerSize,
    Map<String, String> choices,
    Map<Layer, Cloth> cloths,
    Map<Layer, Layer> cutFrom,
    List<AcceptedChange> accepted,
    boolean everything) {

  public CutRequest {
    choices = Map.copyOf(choices);
    cloths = Map.copyOf(cloths);
    cutFrom = Map.copyOf(cutFrom);
    accepted = List.copyOf(accepted);
  }

  CutRequest choosing(Map<String, String> others) {
    return new CutRequest(
        units, sheet, upperSize, lowerSize, others, cloths, cutFrom, accepted, everything);
  }

  /** The layer whose cloth a layer is cut from. */
  Layer source(Layer layer) {
    return cutFrom.getOrDefault(layer, layer);
  }
}
