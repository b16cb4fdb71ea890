package easewright.size;

import easewright.measure.Measured;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * One possible meaning of a label: its girths under one way of reading number and letter.
 *
 * @param region where such labels are printed
 * @param basis how number and letter are read
 * @param cell its girths; bust and difference are both null for a band alone
 */
public record LabelReading(Region region, Basis basis, SizeCell cell) {
  private static final double MM_PER_INCH = 25.4;

  /** Ways to read number and letter. */
  public enum Basis {
    /**
     * The number is the underbust on the region's own scale, the letter a step of the difference.
     */
    STANDARD,
    /** The number is the measured underbust in inches; one inch of difference per letter. */
    INCHES_MEASURED,
    /**
     * The number includes about four added inches; one inch per letter over the measured underbust.
     */
    INCHES_ADDED,
    /** The number includes about four added inches; one inch per letter over the number itself. */
    INCHES_ADDED_OVER_BAND;

    /** The name in the rule book's sentences and on the wire. */
    public String wireName() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * All possible meanings of a label.
   *
   * @param label the sizes it names, of which one may be another region's name for the same girths
   * @param region where it was printed; null when not known, and then every region is tried
   */
  public static List<LabelReading> of(List<SizeLabel> label, Region region) {
    return label.stream()
        .flatMap(
            one ->
                Arrays.stream(Region.values())
                    .filter(each -> region == null || each == region)
                    .flatMap(each -> in(each, one).stream()))
        .distinct()
        .toList();
  }

  /** The probability that the measured girths match this reading, 0 to 1. */
  public double probability(Measured bust, Measured underbust) {
    return SizeChart.of(List.of(cell)).estimate(bust, underbust).probability(cell.id());
  }

  /** The middle of the underbust girths, mm. */
  public double underbustMm() {
    return middle(cell.underbust());
  }

  /** The middle of the bust girths, mm; empty for a band alone. */
  public Optional<Double> bustMm() {
    return cell.bust() != null
        ? Optional.of(middle(cell.bust()))
        : Optional.ofNullable(cell.difference()).map(d -> underbustMm() + middle(d));
  }

  private static double middle(Range range) {
    return (range.loMm() + range.hiMm()) / 2;
  }

  private static List<LabelReading> in(Region region, SizeLabel label) {
    String written =
        label.letter() == null ? region.unwrittenLetter().orElse(null) : label.letter();
    Optional<String> letter = Optional.ofNullable(written).flatMap(region::letter);
    if (written != null && letter.isEmpty()) {
      return List.of();
    }
    Optional<Integer> eu = region.euBand(label.number());
    List<LabelReading> readings = new ArrayList<>();
    if (!region.countsInches()) {
      eu.flatMap(band -> standard(region, band, letter)).ifPresent(readings::add);
      return readings;
    }
    inchesMeasured(region, label.number(), letter).ifPresent(readings::add);
    eu.ifPresent(band -> inchesAdded(region, band, letter, readings));
    return readings;
  }

  private static Optional<LabelReading> standard(Region region, int eu, Optional<String> letter) {
    SizeSystem system = region.letters();
    return band(system, eu)
        .map(
            cell ->
                letter.isEmpty()
                    ? alone(region, Basis.STANDARD, cell.underbust())
                    : cup(region, Basis.STANDARD, cell.underbust(), difference(system, letter)));
  }

  private static Optional<LabelReading> inchesMeasured(
      Region region, int inches, Optional<String> letter) {
    SizeSystem system = region.letters();
    return band(system, inches)
        .map(
            cell ->
                letter.isEmpty()
                    ? alone(region, Basis.INCHES_MEASURED, cell.underbust())
                    : cup(
                        region,
                        Basis.INCHES_MEASURED,
                        cell.underbust(),
                        difference(system, letter)));
  }

  private static void inchesAdded(
      Region region, int eu, Optional<String> letter, List<LabelReading> readings) {
    Optional<SizeCell> band = band(SizeSystem.EN, eu);
    if (band.isEmpty()) {
      return;
    }
    Range underbust = band.get().underbust();
    if (letter.isEmpty()) {
      readings.add(alone(region, Basis.INCHES_ADDED, underbust));
      return;
    }
    Range difference = difference(region.letters(), letter);
    double number = Region.UK.number(eu) * MM_PER_INCH;
    Range bust = Range.ofMm(number + difference.loMm(), number + difference.hiMm());
    readings.add(
        new LabelReading(
            region,
            Basis.INCHES_ADDED_OVER_BAND,
            SizeCell.ofBust("reading", "band", "cup", underbust, bust)));
    // Last, since no table that prints this was found: the letter over the measured underbust.
    readings.add(cup(region, Basis.INCHES_ADDED, underbust, difference));
  }

  private static LabelReading cup(Region region, Basis basis, Range underbust, Range difference) {
    return new LabelReading(
        region, basis, SizeCell.ofDifference("reading", "band", "cup", underbust, difference));
  }

  private static LabelReading alone(Region region, Basis basis, Range underbust) {
    return new LabelReading(
        region, basis, new SizeCell("reading", "band", null, underbust, null, null));
  }

  private static Optional<SizeCell> band(SizeSystem system, int number) {
    String band = String.valueOf(number);
    return system.chart().cells().stream().filter(c -> c.band().equals(band)).findFirst();
  }

  private static Range difference(SizeSystem system, Optional<String> letter) {
    return system.chart().cells().stream()
        .filter(cell -> cell.cup().equals(letter.orElseThrow()))
        .findFirst()
        .orElseThrow()
        .difference();
  }
}
