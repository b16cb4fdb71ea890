package easewright.inference;

import java.util.Objects;

/**
 * How strongly one cause shows one sign.
 *
 * @param cause id of the cause
 * @param sign id of the sign
 * @param strength probability, 0 to 1, that this cause alone, without the leak, produces the sign
 */
public record Link(String cause, String sign, double strength) {

  /**
   * @throws IllegalArgumentException if the strength is no probability
   */
  public Link {
    Objects.requireNonNull(cause, "A link needs a cause.");
    Objects.requireNonNull(sign, "A link needs a sign.");
    if (!(strength >= 0 && strength <= 1)) {
      throw new IllegalArgumentException(
          "The strength of %s for %s must lie between 0 and 1, not %s."
              .formatted(cause, sign, strength));
    }
  }
}
