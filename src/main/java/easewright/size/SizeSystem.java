package easewright.size;

import easewright.measure.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Systems that name a band and a cup letter. A letter means nothing without its system: a 15 cm
 * difference is a B in EN 13402-3 and a C in JIS L 4006.
 *
 * <p>In all of them the band is the measured underbust rounded to the band step, and the cup is the
 * bust minus the <em>measured</em> underbust, never minus the rounded band: 107 cm over 87 cm is 85
 * D though 107 lies outside the printed 85 D cell. The texts do not define a value exactly on a
 * class edge of the band; here every class excludes its lower and includes its upper edge, as the
 * cup classes do, so an underbust of 72.5 cm is a 70.
 */
public enum SizeSystem {
  /**
   * EN 13402-3: bands every 5 cm, cups every 2 cm from AA "10–12". The standard's table ends at 110
   * H; further bands are extrapolated, letters after H are from memory.
   */
  EN(50, 10, 55, 150, 5, 20, 100, "AA A B C D E F G H I J K"),
  /**
   * JIS L 4006: bands every 5 cm ±2.5, cups every 2.5 cm ±1.25 from AAA at 5 cm; KS K 9404 has the
   * same steps. Written cup first, "C75" (from memory).
   */
  JIS(50, 10, 55, 150, 5, 25, 37.5, "AAA AA A B C D E F G H I"),
  /**
   * British letters, one inch each (common practice; sequence to HH from an encyclopaedia, then
   * from memory). Bands are the measured underbust to the even inch. Disputed: an older practice
   * adds 4 or 5 inches to the underbust first, and labels in shops often still hide that addition,
   * so a shop's "34" may be a 30 here.
   */
  UK(2 * 25.4, 25.4, 20, 60, 2, 25.4, -12.7, "AA A B C D DD E F FF G GG H HH J JJ K KK L"),
  /** United States letters, one inch each; bands and dispute as for {@link #UK}. */
  US(2 * 25.4, 25.4, 20, 60, 2, 25.4, -12.7, "AA A B C D DD DDD G H I J K L");

  private final double bandStepMm;
  private final double mmPerBandNumber;
  private final int firstBand;
  private final int lastBand;
  private final int bandStep;
  private final double cupStepMm;
  private final double firstCupMm;
  private final List<String> cups;
  private final SizeChart chart;

  SizeSystem(
      double bandStepMm,
      double mmPerBandNumber,
      int firstBand,
      int lastBand,
      int bandStep,
      double cupStepMm,
      double firstCupMm,
      String cups) {
    this.bandStepMm = bandStepMm;
    this.mmPerBandNumber = mmPerBandNumber;
    this.firstBand = firstBand;
    this.lastBand = lastBand;
    this.bandStep = bandStep;
    this.cupStepMm = cupStepMm;
    this.firstCupMm = firstCupMm;
    this.cups = List.of(cups.split(" "));
    this.chart = SizeChart.of(cells());
  }

  /** The size for these girths, or empty if they lie outside the system's bands or cups. */
  public Optional<Designation> of(Length underbust, Length bust) {
    double difference = bust.minus(underbust).mm();
    for (int band = firstBand; band <= lastBand; band += bandStep) {
      if (underbustRange(band).contains(underbust.mm())) {
        for (String cup : cups) {
          if (differenceRange(cup).contains(difference)) {
            return Optional.of(new Designation(this, band, cup));
          }
        }
      }
    }
    return Optional.empty();
  }

  /** The whole system as a chart, for computing the probability of each of its sizes. */
  public SizeChart chart() {
    return chart;
  }

  /** The cup letters, smallest first. */
  public List<String> cups() {
    return cups;
  }

  /** The number a band grows by from one size to the next: 5 (cm) or 2 (inches). */
  public int bandStep() {
    return bandStep;
  }

  /** Whether the system has bands of this number. */
  public boolean hasBand(int band) {
    return band >= firstBand && band <= lastBand && (band - firstBand) % bandStep == 0;
  }

  int bandIndex(int band) {
    return (band - firstBand) / bandStep;
  }

  /** Nominal girth of a band number, mm. */
  double bandMm(int band) {
    return band * mmPerBandNumber;
  }

  Range underbustRange(int band) {
    return Range.ofMm(bandMm(band) - bandStepMm / 2, bandMm(band) + bandStepMm / 2);
  }

  Range differenceRange(String cup) {
    double lo = firstCupMm + cups.indexOf(cup) * cupStepMm;
    return Range.ofMm(Math.max(0, lo), lo + cupStepMm);
  }

  String label(int band, String cup) {
    // Not a comparison with JIS: the constants do not exist yet while their charts are built.
    return name().equals("JIS") ? cup + band : band + " " + cup;
  }

  private List<SizeCell> cells() {
    List<SizeCell> cells = new ArrayList<>();
    for (int band = firstBand; band <= lastBand; band += bandStep) {
      for (String cup : cups) {
        cells.add(
            SizeCell.ofDifference(
                label(band, cup),
                String.valueOf(band),
                cup,
                underbustRange(band),
                differenceRange(cup)));
      }
    }
    return cells;
  }
}
