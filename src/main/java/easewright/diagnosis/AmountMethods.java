package easewright.diagnosis;

import java.util.Set;

/** The amount methods an adjustment may name, and how their amounts behave. */
final class AmountMethods {
  /** Every method the computing knows. */
  static final Set<String> ALL =
      Set.of(
          "band take-in",
          "band let-out",
          "elastic cut length",
          "cup girth",
          "cup girth less",
          "pinch",
          "fold",
          "width fold",
          "bust point in",
          "bust point out",
          "bust point up",
          "bust point down",
          "strap slack",
          "strap distance",
          "front length",
          "front length less",
          "stretch factor",
          "allowance error",
          "none");

  private static final Set<String> GIRTHS =
      Set.of(
          "band take-in",
          "band let-out",
          "cup girth",
          "cup girth less",
          "width fold",
          "stretch factor");

  private AmountMethods() {}

  /** Whether the amount is a change of girth, split over all the edges it is made at. */
  static boolean splits(String method) {
    return GIRTHS.contains(method);
  }
}
