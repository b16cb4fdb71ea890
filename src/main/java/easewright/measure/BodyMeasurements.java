package easewright.measure;

import java.util.List;

/**
 * Body measurements; {@code null} means not measured.
 *
 * @param bust largest horizontal girth over the bust, tape level (EN 13402-1)
 * @param underbust horizontal girth just below the breasts
 * @param upperChest horizontal girth at the armpits
 * @param bustPointWidth from one bust point straight across to the other
 * @param shoulderToBustPoint from the shoulder at the neck down to the bust point
 * @param shoulderToUnderbust from the shoulder at the neck over the bust to the underbust line
 */
public record BodyMeasurements(
    Measured bust,
    Measured underbust,
    Measured upperChest,
    Measured bustPointWidth,
    Measured shoulderToBustPoint,
    Measured shoulderToUnderbust) {

  /** The wire name of each. */
  public static final List<String> NAMES =
      List.of(
          "bust",
          "underbust",
          "upperChest",
          "bustPointWidth",
          "shoulderToBustPoint",
          "shoulderToUnderbust");

  /** No measurements. */
  public static final BodyMeasurements NONE =
      new BodyMeasurements(null, null, null, null, null, null);

  /** The two girths required for every size; either may be {@code null}. */
  public static BodyMeasurements of(Measured bust, Measured underbust) {
    return new BodyMeasurements(bust, underbust, null, null, null, null);
  }

  /** The same with another upper chest. */
  public BodyMeasurements withUpperChest(Measured other) {
    return new BodyMeasurements(
        bust, underbust, other, bustPointWidth, shoulderToBustPoint, shoulderToUnderbust);
  }

  /** The same with another bust-point width. */
  public BodyMeasurements withBustPointWidth(Measured other) {
    return new BodyMeasurements(
        bust, underbust, upperChest, other, shoulderToBustPoint, shoulderToUnderbust);
  }

  /** The same with other lengths from the shoulder, to the bust point and to the underbust. */
  public BodyMeasurements withShoulderTo(Measured bustPoint, Measured underbustLine) {
    return new BodyMeasurements(
        bust, underbust, upperChest, bustPointWidth, bustPoint, underbustLine);
  }

  /**
   * The measurement with a wire name, or null if it was not taken.
   *
   * @throws IllegalArgumentException if no measurement has this name
   */
  public Measured named(String name) {
    return switch (name) {
      case "bust" -> bust;
      case "underbust" -> underbust;
      case "upperChest" -> upperChest;
      case "bustPointWidth" -> bustPointWidth;
      case "shoulderToBustPoint" -> shoulderToBustPoint;
      case "shoulderToUnderbust" -> shoulderToUnderbust;
      default -> throw new IllegalArgumentException(name + " is no measurement.");
    };
  }
}
