package easewright.diagnosis;

import easewright.cloth.ClothNeed;
import easewright.cloth.Estimate;
import easewright.pattern.Cut;
import easewright.pattern.Layer;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import easewright.pattern.Piece;
import easewright.pattern.Span;
import easewright.rulebook.Practice.OnSheet;
import easewright.rulebook.Practice.TraitEntry;
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
  private final List<TraitEntry> traits;

  private Draft(Fitting fitting, RuleBookSource source) {
    this.fitting = fitting;
    this.sheet = Optional.ofNullable(fitting.sheet());
    this.size = sheet.flatMap(s -> Optional.ofNullable(fitting.sizeCut()).flatMap(s::size));
    this.cut = sheet.map(s -> s.cut(fitting.choices()));
    this.finished =
        size.map(z -> sheet.orElseThrow().finishedMm(z, fitting.choices())).orElse(Map.of());
    this.garmentErrorMm = source.parameter("garment-error");
    this.traits = source.catalog().practice().traits();
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
    return sheet.map(s -> s.cloth().get(layer(role)));
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

  /** The traits of the pattern as cut, by the rule book's ids; none where no sheet was given. */
  Set<String> traits() {
    Set<String> holding = new LinkedHashSet<>();
    if (sheet.isPresent()) {
      traits.stream().filter(this::holds).forEach(trait -> holding.add(trait.id()));
    }
    return holding;
  }

  private boolean holds(TraitEntry trait) {
    return (trait.with() == null || trait.with().stream().allMatch(this::has))
        && (trait.without() == null || trait.without().stream().noneMatch(this::has));
  }

  private boolean has(OnSheet what) {
    List<Piece> pieces = cut.orElseThrow().pieces();
    PatternSheet pattern = sheet.orElseThrow();
    if (what.line() != null) {
      return !cut.orElseThrow().piecesWith(what.line()).isEmpty();
    }
    if (what.trim() != null) {
      return pattern.trims(fitting.choices()).stream()
          .anyMatch(trim -> trim.kind().equals(what.trim()));
    }
    if (what.layer() != null) {
      return pieces.stream().anyMatch(piece -> piece.layer() == layer(what.layer()));
    }
    if (what.support() != null) {
      return pattern.supportClass().name().equalsIgnoreCase(what.support());
    }
    return what.fold() && pieces.stream().anyMatch(Piece::onFold);
  }

  private static Layer layer(String role) {
    return Layer.valueOf(role.toUpperCase(Locale.ROOT));
  }
}
