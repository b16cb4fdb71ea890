package easewright.size;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A size named in one system: band number (cm, or inches for UK and US) and cup letter.
 *
 * @param system the system that defines the letter
 * @param band a band number of that system
 * @param cup a cup letter of that system
 */
public record Designation(SizeSystem system, int band, String cup) {
  public Designation {
    if (!system.hasBand(band)) {
      throw new IllegalArgumentException("the system has no such band number");
    }
    if (!system.cups().contains(cup)) {
      throw new IllegalArgumentException("the system has no such cup letter");
    }
  }

  /** As written: "85 D", "30 D"; JIS puts the cup first, "C75". */
  public String label() {
    return system.label(band, cup);
  }

  /**
   * The bust girth printed in the tables for this size: band plus difference class. For labels
   * only: a body is sized by its difference, and may lie outside (107 cm over 87 cm is an EN 85 D).
   */
  public Range nominalBust() {
    Range difference = system.differenceRange(cup);
    double band = system.bandMm(this.band);
    return Range.ofMm(band + difference.loMm(), band + difference.hiMm());
  }

  /**
   * Equal for sister sizes, which are one band up and one cup down (common practice: 30 D and 32
   * C). Counts bands from the system's first and cups from its first letter. Equal volume is a
   * convention, not an identity: nominal busts of EN sisters differ by 3 cm.
   */
  public int sisterIndex() {
    return system.bandIndex(band) + system.cups().indexOf(cup);
  }

  /** The sister on a band this many steps larger (negative: smaller), if the system has it. */
  public Optional<Designation> sister(int bandSteps) {
    int otherBand = band + bandSteps * system.bandStep();
    int otherCup = system.cups().indexOf(cup) - bandSteps;
    return system.hasBand(otherBand) && otherCup >= 0 && otherCup < system.cups().size()
        ? Optional.of(new Designation(system, otherBand, system.cups().get(otherCup)))
        : Optional.empty();
  }

  /** The nearest sisters: smaller band first, then larger, if the system has them. */
  public List<Designation> sisters() {
    List<Designation> sisters = new ArrayList<>();
    sister(-1).ifPresent(sisters::add);
    sister(1).ifPresent(sisters::add);
    return sisters;
  }
}
