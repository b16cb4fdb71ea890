package easewright.cloth;

import java.util.Optional;

/**
 * A cloth tested in the direction around the body and, optionally, along it.
 *
 * @param around the test in the direction laid around the body
 * @param along the test up and down the body; null if not tested
 */
public record ClothTest(StretchTest around, StretchTest along) {

  /** Where the greatest stretch of a cloth runs. */
  public enum Greatest {
    /** Around the body, as close-fitting patterns require. */
    AROUND,
    /** Up and down the body. */
    ALONG,
    /** Too similar for the readings to tell. */
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

  /** Where the greatest stretch runs; empty if only one direction was tested. */
  public Optional<Greatest> greatest() {
    if (along == null) {
      return Optional.empty();
    }
    Estimate a = around.stretch();
    Estimate b = along.stretch();
    // Two standard deviations of the difference: below that, the measurement error dominates.
    if (Math.abs(a.value() - b.value()) <= 2 * Math.hypot(a.sd(), b.sd())) {
      return Optional.of(Greatest.EITHER);
    }
    return Optional.of(a.value() > b.value() ? Greatest.AROUND : Greatest.ALONG);
  }

  /** The handbook class of the greater stretch tested. */
  public StretchClass stretchClass() {
    double aroundStretch = around.stretch().value();
    return StretchClass.of(
        along == null ? aroundStretch : Math.max(aroundStretch, along.stretch().value()));
  }

  /** The lower recovery of the directions read after release. */
  public Optional<Estimate> recovery() {
    Optional<Estimate> a = around.recovery();
    Optional<Estimate> b = along == null ? Optional.empty() : along.recovery();
    if (a.isEmpty() || b.isEmpty()) {
      return a.or(() -> b);
    }
    return a.get().value() <= b.get().value() ? a : b;
  }
}
