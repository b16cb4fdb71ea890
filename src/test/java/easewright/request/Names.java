package easewright.request;

import easewright.pattern.PatternSheets;
import easewright.rulebook.RuleBookSource;
import java.util.List;

/** A few known names for reading requests, and the shipped sheets. */
final class Names {
  static final PatternSheets SHEETS = new PatternSheets();
  static final String SHEET = SHEETS.shipped().get(0).id();
  static final String SIZE = SHEETS.shipped().get(0).sizes().get(0).name();
  static final KnownNames KNOWN =
      new KnownNames(
          "sports-bra",
          new FamilyNames(RuleBookSource.compiledIn(), SHEETS),
          List.of(
              "band-rides-up-at-the-back", "neckline-gapes", "straps-slip-off", "skin-goes-numb"),
          List.of("skin-goes-numb"),
          List.of("back", "front", "neckline"),
          List.of("take-in-the-band", "shorten-the-straps"),
          List.of("band-too-long", "straps-too-short"),
          List.of("band", "cups", "neckline"),
          RuleBookSource.compiledIn().plausibility(),
          SHEETS,
          RuleBookSource.compiledIn());

  private Names() {}

  static FittingReader reader() {
    return new FittingReader(KNOWN);
  }
}
