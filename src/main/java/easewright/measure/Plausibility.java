package easewright.measure;

import java.util.ArrayList;
import java.util.List;

/** Finds measurements that can't have been meant, or that are worth taking again. */
public final class Plausibility {
  /** Two readings this close, in mm, are likely of the same place: a practised tape's ±1 cm. */
  private static final double SAME_PLACE_MM = 10;

  private Plausibility() {}

  /**
   * All remarks, the impossible ones first, in the order of the measurements. Values outside any
   * reading a tape can show, and an underbust that is not below the bust, are impossible; values
   * outside the middle 99 % of a survey (Gordon et al. 1989) are unlikely. Empty when all is well.
   */
  public static List<Remark> check(BodyMeasurements body) {
    List<Remark> remarks = new ArrayList<>();
    for (Place place : Place.values()) {
      Measured measured = place.of(body);
      if (measured != null) {
        place.remark(measured).ifPresent(remarks::add);
      }
    }
    boolean inverted = addInversion(body, remarks);
    addWindows(body, inverted, remarks);
    addShoulderOrder(body, remarks);
    remarks.sort((a, b) -> a.kind().compareTo(b.kind())); // stable: keeps the order within a kind
    return List.copyOf(remarks);
  }

  private static boolean addInversion(BodyMeasurements body, List<Remark> remarks) {
    if (!bothPossible(Place.BUST, Place.UNDERBUST, body)
        || body.underbust().value().mm() < body.bust().value().mm()) {
      return false;
    }
    boolean close = -body.bust().differenceMm(body.underbust()) <= SAME_PLACE_MM;
    remarks.add(
        new Remark(
            Place.UNDERBUST.wireName(),
            Remark.Kind.IMPOSSIBLE,
            "The underbust of %s is not below the bust of %s."
                .formatted(body.underbust().text(), body.bust().text()),
            close
                ? "The same place was probably measured twice: measure once just below the breasts"
                    + " and once over their fullest part."
                : "The two are probably swapped: write the larger girth as the bust."));
    return true;
  }

  private static void addWindows(BodyMeasurements body, boolean inverted, List<Remark> remarks) {
    Window spoke = null;
    for (Window window : Window.values()) {
      boolean said =
          (spoke != null && window.samePairAs(spoke))
              || (inverted && window.samePairAs(Window.BUST_OVER_UNDERBUST));
      if (!said) {
        var remark = window.remark(body);
        if (remark.isPresent()) {
          remarks.add(remark.get());
          spoke = window;
        }
      }
    }
  }

  /** Only unlikely: a bust point may lie below the underbust line. */
  private static void addShoulderOrder(BodyMeasurements body, List<Remark> remarks) {
    if (bothPossible(Place.SHOULDER_TO_BUST_POINT, Place.SHOULDER_TO_UNDERBUST, body)
        && body.shoulderToUnderbust().value().mm() <= body.shoulderToBustPoint().value().mm()) {
      remarks.add(
          new Remark(
              Place.SHOULDER_TO_UNDERBUST.wireName(),
              Remark.Kind.UNLIKELY,
              "Shoulder to underbust, %s, is not longer than shoulder to bust point, %s."
                  .formatted(body.shoulderToUnderbust().text(), body.shoulderToBustPoint().text()),
              "Measure both again in the bra to be worn, over the bust; the two may be swapped."));
    }
  }

  private static boolean bothPossible(Place one, Place two, BodyMeasurements body) {
    Measured first = one.of(body);
    Measured second = two.of(body);
    return first != null && second != null && one.isPossible(first) && two.isPossible(second);
  }
}
