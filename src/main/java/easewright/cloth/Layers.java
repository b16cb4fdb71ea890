package easewright.cloth;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Cloths worn as one: together they stretch no further than the least stretchy, and their tensions
 * add.
 *
 * @param layers the cloths, outermost first; at least one
 */
public record Layers(List<Layer> layers) {

  /**
   * One cloth among several.
   *
   * @param name the maker's name for it, e.g. "lining"
   * @param stretch its stretch in the direction in question, a fraction
   * @param stiffnessNPerCm its tension in N per cm of width for each unit of extension (so at 100
   *     %), assumed to be linear; null if unknown
   */
  public record Layer(String name, Estimate stretch, Double stiffnessNPerCm) {

    /**
     * @throws IllegalArgumentException if the stretch is missing or the stiffness negative
     */
    public Layer {
      if (stretch == null || stretch.value() < 0) {
        throw new IllegalArgumentException("A layer needs a stretch of zero or more.");
      }
      if (stiffnessNPerCm != null && !(stiffnessNPerCm >= 0)) {
        throw new IllegalArgumentException("The stiffness of a layer is zero or more.");
      }
    }
  }

  /**
   * @throws IllegalArgumentException if there is no layer
   */
  public Layers {
    layers = List.copyOf(layers);
    if (layers.isEmpty()) {
      throw new IllegalArgumentException("There is at least one layer.");
    }
  }

  /** The limiting layer: the one that stretches least. */
  public Layer limiting() {
    return layers.stream()
        .min(Comparator.comparingDouble(layer -> layer.stretch().value()))
        .orElseThrow();
  }

  /** The stretch of all layers together, a fraction: that of the limiting layer. */
  public Estimate stretch() {
    return limiting().stretch();
  }

  /**
   * Tension of all layers together in N per cm of width; empty if one layer's is unknown.
   *
   * @param extension the shared extension, a fraction
   * @throws IllegalArgumentException if the layers together do not stretch that far
   */
  public OptionalDouble tensionNPerCm(double extension) {
    if (!(extension >= 0 && extension <= stretch().value())) {
      throw new IllegalArgumentException("The layers together do not stretch that far.");
    }
    if (layers.stream().anyMatch(layer -> layer.stiffnessNPerCm() == null)) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        layers.stream().mapToDouble(layer -> layer.stiffnessNPerCm() * extension).sum());
  }
}
