package easewright.naming;

import java.util.Locale;

/** How the contract writes the constants of an enumeration: {@code NOT_YET} is "not-yet". */
public final class KebabCase {
  private KebabCase() {}

  /** The constant as the contract writes it. */
  public static String of(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
