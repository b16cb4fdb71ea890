package easewright.diagnosis;

import easewright.cloth.ClothNeed;
import easewright.cloth.Estimate;
import easewright.pattern.Cut;
import easewright.pattern.Layer;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import easewright.pattern.Span;
import easewright.pattern.Trim;
import easewright.rulebook.RuleBookSource;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What pattern, size and choices say of the garment cut: finished measurements, the body it is
 * drafted for, and traits. Empty where no sheet or no size was given. Lengths in millimetres.
 */
final class Draft {
  private final Fitting fitting;
  private final Optional<PatternSheet> sheet;
  private final Optional<PatternSize> size;
  private final Optional<Cut> cut;
  private final Map<String, Double> finished;
  private final double garmentErrorMm;

  private Draft(Fitting fitting, RuleBookSource source) {
    this.fitting = fitting;
    this.sheet = Optional.ofNullable(fitting.sheet());
    this.size = sheet.flatMap(s -> Optional.ofNullable(fitting.sizeCut()).flatMap(s::size));
    this.cut = sheet.map(s -> s.cut(fitting.choices()));
    this.finished =
        size.map(z -> sheet.orElseThrow().finishedMm(z, fitting.choices())).orElse(Map.of());
    this.garmentErrorMm = source.parameter("garment-error");
  }

  static Draft of(Fitting fitting, RuleBookSource source) {
    return new Draft(fitting, source);
  }

  /** Finished underband, measured on the toile if it was, else as drafted. */
  Optional<Estimate> underband() {
    return garment(
        fitting.garment().underband() == null ? null : fitting.garment().underband().mm(),
        "underband");
  }

  /** Finished bust, measured on the toile if it was, else as drafted. */
  Optional<Estimate> bust() {
    return garment(fitting.garment().bust() == null ? null : fitting.garment().bust().mm(), "bust");
  }

  private Optional<Estimate> garment(Double measuredMm, String term) {
    return Optional.ofNullable(measuredMm)
        .or(() -> Optional.ofNullable(finished.get(term)))
        .map(mm -> new Estimate(mm, garmentErrorMm));
  }

  /** Middle of the underbust girths the size is for. */
  Optional<Double> underbustMm() {
    return size.map(z -> z.underbustMm().middleMm());
  }

  /** Middle of the differences, bust less underbust, the size is for. */
  Optional<Double> differenceMm() {
    return size.map(
        z ->
            z.differenceMm()
                .map(Span::middleMm)
                .orElseGet(() -> z.bustMm().orElseThrow().middleMm() - z.underbustMm().middleMm()));
  }

  /** How far the band is stretched on the body the size is for. */
  Optional<Double> bandStrain() {
    return underbustMm()
        .flatMap(body -> Optional.ofNullable(finished.get("underband")).map(mm -> body / mm - 1));
  }

  /** How far the bust is stretched on the body the size is for. */
  Optional<Double> bustStrain() {
    return underbustMm()
        .flatMap(
            body ->
                Optional.ofNullable(finished.get("bust"))
                    .map(mm -> (body + differenceMm().orElseThrow()) / mm - 1));
  }

  Optional<Double> bustPointWidthMm() {
    return Optional.ofNullable(finished.get("bustPointWidth"));
  }

  Optional<Double> shoulderToBustPointMm() {
    return Optional.ofNullable(finished.get("shoulderToBustPoint"));
  }

  Optional<Double> shoulderToUnderbustMm() {
    return Optional.ofNullable(finished.get("shoulderToUnderbust"));
  }

  Optional<ClothNeed> need(String role) {
    return sheet.map(s -> s.cloth().get(Layer.valueOf(role.toUpperCase(Locale.ROOT))));
  }

  Optional<Integer> seamsAround() {
    return cut.map(c -> c.seamsAcross("bust")).filter(seams -> seams > 0);
  }

  Optional<Double> seamAllowanceMm() {
    return sheet.map(PatternSheet::seamAllowanceMm);
  }

  Optional<Cut> cut() {
    return cut;
  }

  /** Properties rules may ask about, in kebab case. */
  Set<String> traits() {
    Set<String> traits = new LinkedHashSet<>();
    if (sheet.isEmpty()) {
      return traits;
    }
    Cut pieces = cut.orElseThrow();
    List<Trim> trims = sheet.get().trims(fitting.choices());
    traits.add(sheet.get().supportClass().name().toLowerCase(Locale.ROOT) + "-support");
    traits.add(pieces.piecesWith("shaped-seam").isEmpty() ? "compression" : "shaped-front");
    boolean opens = trims.stream().anyMatch(trim -> trim.kind().equals("fastener"));
    traits.add(
        !opens
            ? "pull-on"
            : pieces.piecesWith("centre-front-opening").isEmpty()
                ? "back-opening"
                : "front-opening");
    addIf(traits, "cased-elastic", !pieces.piecesWith("casing").isEmpty());
    addIf(traits, "adjustable-straps", trims.stream().anyMatch(t -> t.kind().equals("slider")));
    addIf(traits, "lined", pieces.pieces().stream().anyMatch(p -> p.layer() == Layer.LINING));
    addIf(
        traits,
        "with-support-layer",
        pieces.pieces().stream().anyMatch(p -> p.layer() == Layer.SUPPORT));
    addIf(traits, "pieces-on-the-fold", pieces.pieces().stream().anyMatch(p -> p.onFold()));
    return known(traits);
  }

  /** A trait that rules could not name would silently never count. */
  private static Set<String> known(Set<String> traits) {
    if (!RuleWords.TRAITS.containsAll(traits)) {
      throw new IllegalStateException("Name these traits in RuleWords: " + traits);
    }
    return traits;
  }

  private static void addIf(Set<String> traits, String trait, boolean holds) {
    if (holds) {
      traits.add(trait);
    }
  }
}
