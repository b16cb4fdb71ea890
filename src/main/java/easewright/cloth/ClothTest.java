package easewright.cloth;

import java.util.Optional;

/**
 * A cloth tested in the direction that goes around the body and, if tried, along it.
 *
 * @param around the test in the direction laid around the body
 * @param along the test up and down the body; null when not tried
 */
public record ClothTest(StretchTest around, StretchTest along) {

  /** Where the greatest stretch of a cloth runs. */
  public enum Greatest {
    /** Around the body, as close-fitting patterns ask. */
    AROUND,
    /** Up and down the body. */
    ALONG,
    /** Too alike for the readings to tell. */
    EITHER
  }

  /**
   * @throws IllegalArgumentException if the test around the body is missing
   */
  public ClothTest {
    if (around == null) {
      throw new IllegalArgumentException("A cloth test needs the stretch around the body.");
    }
  }

  /** Where the greatest stretch runs; empty when only one direction was tried. */
  public Optional<Greatest> greatest() {
    if (along == null) {
      return Optional.empty();
    }
    Estimate a = around.stretch();
    Estimate b = along.stretch();
    // Two standard deviations of the difference: below that, tape and hand decide, not cloth.
    if (Math.abs(a.value() - b.value()) <= 2 * Math.hypot(a.sd(), b.sd())) {
      return Optional.of(Greatest.EITHER);
    }
    return Optional.of(a.value() > b.value() ? Greatest.AROUND : Greatest.ALONG);
  }

  /** The handbook class of the greater stretch tried. */
  public StretchClass stretchClass() {
    double aroundStretch = around.stretch().value();
    return StretchClass.of(
        along == null ? aroundStretch : Math.max(aroundStretch, along.stretch().value()));
  }

  /** The poorer recovery of the directions that were read after letting go. */
  public Optional<Estimate> recovery() {
    Optional<Estimate> a = around.recovery();
    Optional<Estimate> b = along == null ? Optional.empty() : along.recovery();
    if (a.isEmpty() || b.isEmpty()) {
      return a.or(() -> b);
    }
    return a.get().value() <= b.get().value() ? a : b;
  }
}
