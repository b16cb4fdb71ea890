package easewright.pattern;

import easewright.size.Region;
import easewright.size.SizeLabel;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;

/** Finds the size of a sheet by any of its names. */
public final class SizeNames {
  private SizeNames() {}

  /**
   * The sizes called so: the one of exactly this name, else those whose name or alias is written
   * alike, else those that share a size with a label of two ("34DD" and "34DD/E", "S" and "S/M").
   *
   * @param region the region that calls it so; null if not known
   */
  public static List<PatternSize> find(PatternSheet sheet, String written, Region region) {
    List<PatternSize> exact = sheet.size(written).stream().toList();
    if (!exact.isEmpty()) {
      return exact;
    }
    String plain = plain(written);
    List<PatternSize> alike =
        sheet.sizes().stream()
            .filter(size -> names(size, region).anyMatch(name -> plain(name).equals(plain)))
            .toList();
    if (!alike.isEmpty()) {
      return alike;
    }
    Set<String> parts = parts(written);
    return sheet.sizes().stream()
        .filter(
            size ->
                names(size, region)
                    .anyMatch(name -> parts(name).stream().anyMatch(parts::contains)))
        .toList();
  }

  /** Every name and alias on a sheet. */
  public static List<String> all(PatternSheet sheet) {
    return sheet.sizes().stream().flatMap(size -> names(size, null)).distinct().toList();
  }

  /** Whether the sheet says what a region calls its sizes. */
  public static boolean has(PatternSheet sheet, Region region) {
    return sheet.sizes().stream()
        .flatMap(size -> size.aliases().stream())
        .anyMatch(alias -> alias.region() == region);
  }

  private static Stream<String> names(PatternSize size, Region region) {
    return Stream.concat(
        Stream.of(size.name()),
        size.aliases().stream()
            .filter(alias -> region == null || alias.region() == null || alias.region() == region)
            .map(SizeAlias::label));
  }

  static String plain(String label) {
    return label.strip().toUpperCase(Locale.ROOT).replaceAll("\\s+", "");
  }

  private static Set<String> parts(String label) {
    Set<String> parts = new HashSet<>();
    SizeLabel.parse(label).forEach(one -> parts.add(plain(one.toString())));
    if (parts.isEmpty()) {
      Stream.of(label.split("/")).map(SizeNames::plain).forEach(parts::add);
    }
    return parts;
  }
}
