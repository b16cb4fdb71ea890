package easewright.size;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Where a size label was printed, which determines the possible meanings of its number and letter.
 * Band numbers follow {@link BandLabels}, letters the sequences of {@link SizeSystem}.
 */
public enum Region {
  /** EN 13402-3 as printed in most of Europe. */
  EU(BandLabels.EU, SizeSystem.EN),
  /** France, Belgium and Spain; some print DD for E. */
  FR(BandLabels.FR, SizeSystem.EN),
  /** Italy; a B is often left off. */
  IT(BandLabels.IT, SizeSystem.EN),
  /** United Kingdom. */
  UK(BandLabels.UK, SizeSystem.UK),
  /** United States; DD is also printed E, and DDD is also printed F. */
  US(BandLabels.US, SizeSystem.US),
  /** Japan, JIS L 4006; Korea's KS K 9404 has the same steps. */
  JP(BandLabels.EU, SizeSystem.JIS);

  private final BandLabels bands;
  private final SizeSystem letters;

  Region(BandLabels bands, SizeSystem letters) {
    this.bands = bands;
    this.letters = letters;
  }

  /** The name on the wire: "uk". */
  public String wireName() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The region of this wire name, if there is one. */
  public static Optional<Region> named(String wireName) {
    return Arrays.stream(values()).filter(r -> r.wireName().equals(wireName)).findFirst();
  }

  /** Whether its cups are counted in inches. */
  public boolean countsInches() {
    return letters == SizeSystem.UK || letters == SizeSystem.US;
  }

  /** The system its letters belong to. */
  public SizeSystem letters() {
    return letters;
  }

  /** The EN band a band number of this region stands for, if it is one. */
  public Optional<Integer> euBand(int number) {
    try {
      return Optional.of(bands.toEu(number));
    } catch (IllegalArgumentException noSuchBand) {
      return Optional.empty();
    }
  }

  /** The band number this region prints for an EN band. */
  public int number(int euBand) {
    return bands.ofEu(euBand);
  }

  /** The letter as written in its system; empty if the region does not have it. */
  public Optional<String> letter(String written) {
    String upper = written.toUpperCase(Locale.ROOT);
    String plain =
        switch (this) {
          case US -> upper.equals("E") ? "DD" : upper.equals("F") ? "DDD" : upper;
          case EU, FR, IT -> upper.equals("DD") ? "E" : upper;
          default -> upper;
        };
    return Optional.of(plain).filter(letters.cups()::contains);
  }

  /** The label as printed there: "75 C", in Japan "C75". */
  public String label(int number, String letter) {
    return this == JP ? letter + number : number + " " + letter;
  }

  /** The letter meant if a label of the region omits it. */
  public Optional<String> unwrittenLetter() {
    return this == IT ? Optional.of("B") : Optional.empty();
  }

  /** All wire names. */
  public static List<String> wireNames() {
    return Arrays.stream(values()).map(Region::wireName).toList();
  }
}
