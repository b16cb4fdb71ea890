package easewright.check;

import easewright.measure.Length;
import easewright.size.Designation;
import easewright.size.LabelReading.Basis;
import easewright.size.Region;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What two girths are called in every region, with the ways the inch regions are known to print.
 */
final class PrintedLabels {
  private static final double MM_PER_INCH = 25.4;

  private PrintedLabels() {}

  /** A label and the way of counting that gives it. */
  record Printed(Region region, Basis basis, String label) {}

  /** All labels for these girths, mm; omits regions and ways without one. */
  static List<Printed> of(double underbustMm, double bustMm) {
    List<Printed> labels = new ArrayList<>();
    for (Region region : Region.values()) {
      if (region.countsInches()) {
        inches(region, underbustMm, bustMm, labels);
      } else {
        standard(region, underbustMm, bustMm)
            .ifPresent(label -> labels.add(new Printed(region, Basis.STANDARD, label)));
      }
    }
    return labels;
  }

  private static Optional<String> standard(Region region, double underbustMm, double bustMm) {
    return region
        .letters()
        .of(Length.ofMm(underbustMm), Length.ofMm(bustMm))
        .filter(size -> size.band() >= 60)
        .map(size -> region.label(region.number(size.band()), size.cup()));
  }

  private static void inches(
      Region region, double underbustMm, double bustMm, List<Printed> labels) {
    region
        .letters()
        .of(Length.ofMm(underbustMm), Length.ofMm(bustMm))
        .map(Designation::label)
        .ifPresent(label -> labels.add(new Printed(region, Basis.INCHES_MEASURED, label)));
    int eu = euBand(underbustMm);
    if (eu < 60 || eu > 150) {
      return;
    }
    double number = Region.UK.number(eu) * MM_PER_INCH;
    letter(region, bustMm - number)
        .ifPresent(
            letter ->
                labels.add(
                    new Printed(
                        region,
                        Basis.INCHES_ADDED_OVER_BAND,
                        region.label(region.number(eu), letter))));
  }

  /** The EN band of an underbust in mm; its classes exclude their lower edge. */
  static int euBand(double underbustMm) {
    return 5 * (int) Math.ceil((underbustMm - 25) / 50 - 1e-9);
  }

  private static Optional<String> letter(Region region, double differenceMm) {
    return region.letters().chart().cells().stream()
        .filter(cell -> cell.difference().contains(differenceMm))
        .map(cell -> cell.cup())
        .findFirst();
  }
}
