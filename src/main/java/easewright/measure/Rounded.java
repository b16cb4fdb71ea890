package easewright.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Formats numbers for answers: rounded half up, with a decimal point in every locale. An answer
 * contains hundreds of them, so {@code BigDecimal} is used only if plain arithmetic is too near a
 * half to be certain.
 */
public final class Rounded {
  private static final long[] TENS = {1, 10, 100, 1_000, 10_000};
  private static final double MOST_PLAIN = 1e9;

  /** The error of multiplying by a power of ten is less than this below {@link #MOST_PLAIN}. */
  private static final double SURE = 1e-6;

  private Rounded() {}

  /**
   * With exactly this many decimals.
   *
   * @param number finite
   */
  public static String fixed(double number, int decimals) {
    long units = units(number, decimals);
    return units < 0
        ? decimal(number, decimals).toPlainString()
        : written(number < 0 && units > 0, units, decimals);
  }

  /**
   * With at most this many decimals, trailing zeros dropped.
   *
   * @param number finite
   */
  public static String text(double number, int decimals) {
    long units = units(number, decimals);
    if (units >= 0) {
      int left = decimals;
      for (; left > 0 && units % 10 == 0; left--) {
        units /= 10;
      }
      return written(number < 0 && units > 0, units, left);
    }
    BigDecimal rounded = decimal(number, decimals);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** The absolute value in units of the last decimal; -1 if rounding is uncertain. */
  private static long units(double number, int decimals) {
    if (decimals >= TENS.length) {
      return -1;
    }
    double scaled = Math.abs(number) * TENS[decimals];
    if (!(scaled < MOST_PLAIN)) {
      return -1;
    }
    long whole = (long) scaled;
    double rest = scaled - whole;
    return Math.abs(rest - 0.5) < SURE ? -1 : rest > 0.5 ? whole + 1 : whole;
  }

  private static String written(boolean negative, long units, int decimals) {
    StringBuilder text = new StringBuilder(16);
    if (negative) {
      text.append('-');
    }
    text.append(units / TENS[decimals]);
    if (decimals > 0) {
      long rest = units % TENS[decimals];
      text.append('.');
      for (int d = decimals - 1; d > 0 && rest < TENS[d]; d--) {
        text.append('0');
      }
      text.append(rest);
    }
    return text.toString();
  }

  private static BigDecimal decimal(double number, int decimals) {
    // valueOf, not new: 1.45 means 1.45, not its binary approximation, which is lower.
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
