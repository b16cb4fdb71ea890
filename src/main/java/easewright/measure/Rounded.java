package easewright.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Numbers as answers write them: rounded half up, a decimal point whatever the machine's locale.
 */
final class Rounded {
  private Rounded() {}

  /** With exactly this many decimals. */
  static String fixed(double number, int decimals) {
    return decimal(number, decimals).toPlainString();
  }

  /** With at most this many decimals, trailing zeros dropped. */
  static String text(double number, int decimals) {
    BigDecimal rounded = decimal(number, decimals);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  private static BigDecimal decimal(double number, int decimals) {
    // valueOf, not new: 1.45 typed by a person means 1.45, not the binary neighbour below it.
    return BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP);
  }

  static double finite(double number, String what) {
    if (Double.isNaN(number) || Double.isInfinite(number)) {
      throw new IllegalArgumentException(what + " must be a finite number");
    }
    return number + 0.0; // turns -0.0 into 0.0
  }

  static double notNegative(double number, String what) {
    if (finite(number, what) < 0) {
      throw new IllegalArgumentException(what + " must not be negative");
    }
    return number + 0.0;
  }
}
