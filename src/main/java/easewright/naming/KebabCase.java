package easewright.naming;

import java.util.Locale;

/** The contract's spelling of enum constants: {@code NOT_YET} is "not-yet". */
public final class KebabCase {
  private KebabCase() {}

  /** The constant as written in the contract. */
  public static String of(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
