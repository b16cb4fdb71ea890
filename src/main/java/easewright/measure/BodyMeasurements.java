package easewright.measure;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What was measured of a body. A rule book says which measurements there are; those with a method
 * of their own are the ones that formulas in the code work with.
 *
 * @param byName each that was taken, by its name in requests, in the order of the rule book
 */
public record BodyMeasurements(Map<String, Measured> byName) {

  /** The names of those that formulas in the code work with. */
  public static final List<String> IN_FORMULAS =
      List.of("bust", "underbust", "bustPointWidth", "shoulderToBustPoint", "shoulderToUnderbust");

  /** The names of those that systems of sizes go by. */
  static final List<String> OF_SIZES = List.of("bust", "underbust");

  /** No measurements. */
  public static final BodyMeasurements NONE = new BodyMeasurements(Map.of());

  public BodyMeasurements {
    byName = Collections.unmodifiableMap(new LinkedHashMap<>(byName));
  }

  /** The measurement of this name, or null if it was not taken. */
  public Measured named(String name) {
    return byName.get(name);
  }

  /** Largest horizontal girth over the bust, tape level (EN 13402-1), or null. */
  public Measured bust() {
    return named("bust");
  }

  /** Horizontal girth just below the breasts, or null. */
  public Measured underbust() {
    return named("underbust");
  }

  /** From one bust point straight across to the other, or null. */
  public Measured bustPointWidth() {
    return named("bustPointWidth");
  }

  /** From the shoulder at the neck down to the bust point, or null. */
  public Measured shoulderToBustPoint() {
    return named("shoulderToBustPoint");
  }

  /** From the shoulder at the neck over the bust to the underbust line, or null. */
  public Measured shoulderToUnderbust() {
    return named("shoulderToUnderbust");
  }
}
