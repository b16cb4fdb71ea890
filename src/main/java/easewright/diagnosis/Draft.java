package easewright.diagnosis;

import easewright.cloth.ClothNeed;
import easewright.cloth.Estimate;
import easewright.cloth.StretchUse;
import easewright.fitting.Fitting;
import easewright.measure.BodyMeasurements;
import easewright.measure.Length;
import easewright.pattern.BodyCell;
import easewright.pattern.Cut;
import easewright.pattern.Edge;
import easewright.pattern.Layer;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import easewright.pattern.Piece;
import easewright.pattern.Span;
import easewright.pattern.Trim;
import easewright.rulebook.Practice.OnSheet;
import easewright.rulebook.Practice.TraitEntry;
import easewright.rulebook.RuleBookSource;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What pattern, size and choices say of the garment cut: finished measurements, the body it is
 * drafted for, and traits. They come from the sheet, else from the design as it was described, and
 * the body from the label of a known system; empty where none tells. Lengths in millimetres.
 */
final class Draft {
  private final Fitting fitting;
  private final Optional<PatternSheet> sheet;
  private final Optional<PatternSize> size;
  private final Optional<Cut> cut;
  private final List<Trim> trims;
  private final Map<String, String> decided;
  private final Optional<LabelBody> label;
  private final Map<String, Double> finished;
  private final double garmentErrorMm;
  private final double draftedErrorMm;
  private final List<TraitEntry> traits;
  private final StretchUse usualUse;

  private Draft(Fitting fitting, RuleBookSource source) {
    this.fitting = fitting;
    this.sheet = Optional.ofNullable(fitting.sheet());
    this.size = sheet.flatMap(s -> Optional.ofNullable(fitting.sizeCut()).flatMap(s::size));
    this.cut = sheet.map(s -> s.cut(fitting.choices()));
    this.trims = sheet.map(s -> s.trims(fitting.choices())).orElse(List.of());
    this.decided = sheet.map(s -> s.decided(fitting.choices())).orElse(Map.of());
    this.finished =
        sheet.isPresent()
            ? size.map(z -> sheet.orElseThrow().finishedMm(z, fitting.choices())).orElse(Map.of())
            : fitting.design().drafted().lengthsMm();
    this.label = LabelBody.of(fitting, source);
    this.garmentErrorMm = source.parameter("garment-error");
    this.draftedErrorMm = source.parameter("drafted-error");
    this.usualUse = new StretchUse(source.parameter("usual-use-of-stretch"));
    this.traits = source.catalog().practice().traits();
  }

  static Draft of(Fitting fitting, RuleBookSource source) {
    return new Draft(fitting, source);
  }

  /** Finished underband, measured on the toile if it was, else as drafted. */
  Optional<Estimate> underband() {
    return finished("underband");
  }

  /** Finished bust, measured on the toile if it was, else as drafted. */
  Optional<Estimate> bust() {
    return finished("bust");
  }

  /** A finished measurement by its trade term, measured on the toile if it was, else as drafted. */
  Optional<Estimate> finished(String term) {
    return Optional.ofNullable(fitting.garment().named(term))
        .map(length -> new Estimate(length.mm(), garmentErrorMm))
        .or(
            () ->
                Optional.ofNullable(finished.get(term))
                    .map(mm -> new Estimate(mm, draftedErrorMm)));
  }

  /** A finished measurement as drafted, by its trade term, whatever was measured. */
  Optional<Double> draftedMm(String term) {
    return Optional.ofNullable(finished.get(term));
  }

  /** The band's cloth before its elastic, measured, or as the sheet has it. */
  Optional<Double> bandClothMm() {
    return Optional.ofNullable(fitting.garment().bandCloth())
        .map(Length::mm)
        .or(() -> sheet.flatMap(one -> draftedMm("underband")));
  }

  /** Whether pieces of a layer go round the body in the band. */
  boolean isInTheBand(String role) {
    return cut.map(
            one ->
                one.pieces().stream()
                    .filter(piece -> piece.layer() == layer(role))
                    .flatMap(piece -> piece.edges().stream())
                    .anyMatch(edge -> edge.crosses().contains("underband")))
        .orElse("full".equals(fitting.design().words().get(role)));
  }

  /** The error of a girth measured on the toile, mm. */
  double garmentErrorMm() {
    return garmentErrorMm;
  }

  /** What the size cut was taken for without a sheet; empty if it is no label. */
  Optional<LabelBody> label() {
    return label;
  }

  /** Middle of the underbust girths the size is for, of those nearest the wearer. */
  Optional<Double> underbustMm() {
    return size.isPresent()
        ? nearest().flatMap(BodyCell::underbustMm).map(Span::middleMm)
        : label.flatMap(LabelBody::underbustMm);
  }

  /**
   * Of the bodies that the size is for those nearest the wearer: a size that stands for several
   * bands and cups is as right for each of them.
   */
  private Optional<BodyCell> nearest() {
    BodyMeasurements body = fitting.body();
    return size.map(
        z ->
            body.bust() == null || body.underbust() == null
                ? z.bodies().get(z.bodies().size() / 2)
                : z.nearest(body.underbust().value().mm(), body.bust().value().mm()));
  }

  /** Middle of the differences, bust less underbust, the size is for. */
  Optional<Double> differenceMm() {
    return size.isPresent()
        ? nearest().flatMap(BodyCell::middleDifferenceMm)
        : label.flatMap(LabelBody::differenceMm);
  }

  /** How far the band is stretched on the body in the middle of all that the size is for. */
  Optional<Double> bandStrain() {
    return (size.isPresent()
            ? size.flatMap(PatternSize::underbustMm).map(Span::middleMm)
            : underbustMm())
        .flatMap(body -> Optional.ofNullable(finished.get("underband")).map(mm -> body / mm - 1));
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
    return sheet.isPresent()
        ? sheet.map(s -> s.cloth().get(layer(role)))
        : Optional.ofNullable(fitting.design().stretchAsked())
            .filter(asked -> layer(role) == Layer.MAIN)
            .map(asked -> new ClothNeed(asked, null, null, null, null, usualUse));
  }

  Optional<Integer> seamsAround() {
    return sheet.isEmpty()
        ? Optional.ofNullable(fitting.design().seamsAround())
        : cut.map(c -> c.seamsAcross("bust")).filter(seams -> seams > 0);
  }

  Optional<Double> seamAllowanceMm() {
    return sheet.isEmpty()
        ? Optional.ofNullable(fitting.design().seamAllowance()).map(Length::mm)
        : sheet.map(PatternSheet::seamAllowanceMm);
  }

  Optional<Cut> cut() {
    return cut;
  }

  /** Edges and lines to which the pattern sews elastic; empty where no sheet was given. */
  Optional<Set<String>> linesWithElastic() {
    return sheet.map(
        pattern ->
            trims.stream()
                .filter(trim -> trim.kind().equals("elastic"))
                .flatMap(trim -> trim.places().stream())
                .map(Edge.Ref::edge)
                .collect(Collectors.toSet()));
  }

  /** The traits of the pattern as cut, by the rule book's ids; none where nothing tells. */
  Set<String> traits() {
    Set<String> holding = new LinkedHashSet<>();
    traits.stream()
        .filter(sheet.isPresent() ? this::holds : this::isDescribed)
        .forEach(trait -> holding.add(trait.id()));
    return holding;
  }

  private boolean isDescribed(TraitEntry trait) {
    Map<String, String> said = fitting.design().words();
    return trait.design() != null
        && trait.design().entrySet().stream()
            .anyMatch(field -> field.getValue().contains(said.get(field.getKey())));
  }

  private boolean holds(TraitEntry trait) {
    return (trait.with() == null || trait.with().stream().allMatch(this::has))
        && (trait.without() == null || trait.without().stream().noneMatch(this::has));
  }

  private boolean has(OnSheet what) {
    List<Piece> pieces = cut.orElseThrow().pieces();
    if (what.line() != null) {
      return !cut.orElseThrow().piecesWith(what.line()).isEmpty();
    }
    if (what.trim() != null) {
      return trims.stream().anyMatch(trim -> trim.kind().equals(what.trim()));
    }
    if (what.layer() != null) {
      return pieces.stream().anyMatch(piece -> piece.layer() == layer(what.layer()));
    }
    if (what.support() != null) {
      return sheet.orElseThrow().supportClass().name().equalsIgnoreCase(what.support());
    }
    if (what.choice() != null) {
      String[] chosen = what.choice().split("/", 2);
      return chosen[1].equals(decided.get(chosen[0]));
    }
    return what.fold() && pieces.stream().anyMatch(Piece::onFold);
  }

  private static Layer layer(String role) {
    return Layer.valueOf(role.toUpperCase(Locale.ROOT));
  }
}
