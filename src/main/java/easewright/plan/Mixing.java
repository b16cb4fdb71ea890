package easewright.plan;

import easewright.measure.UnitSystem;
import easewright.pattern.Cut;
import easewright.pattern.Edge;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import easewright.pattern.Piece;
import easewright.plan.CutPlan.Blend;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Determines the size each piece is cut in, and where one size blends into the other. */
final class Mixing {
  private static final String LOWER_GIRTH = "underband";
  private static final Set<String> LOWER_ROLES = Set.of("underband", "casing");

  private final Cut cut;
  private final PatternSize upper;
  private final PatternSize lower;
  private final Map<String, Double> upperMm;
  private final Map<String, Double> lowerMm;

  Mixing(CutRequest request, Cut cut) {
    PatternSheet sheet = request.sheet();
    this.cut = cut;
    this.upper = sheet.size(request.upperSize()).orElseThrow();
    this.lower = sheet.size(request.lowerSize()).orElseThrow();
    this.upperMm = sheet.finishedMm(upper, request.choices());
    this.lowerMm = sheet.finishedMm(lower, request.choices());
  }

  String size(Piece piece) {
    return isLower(piece) ? lower.name() : upper.name();
  }

  /** Whether it is an underband piece: it contributes to that girth only. */
  private boolean isLower(Piece piece) {
    Set<String> girths = new HashSet<>();
    piece.edges().forEach(edge -> girths.addAll(edge.crosses()));
    return LOWER_ROLES.contains(piece.role()) || girths.equals(Set.of(LOWER_GIRTH));
  }

  /** The paper a piece needs; a piece that blends from one size into the other needs the wider. */
  Piece.Box box(Piece piece) {
    Piece.Box box = piece.box(size(piece)).orElse(null);
    if (box == null || isLower(piece) || !isMixed() || blended(piece).isEmpty()) {
      return box;
    }
    Piece.Box other = piece.box(lower.name()).orElse(null);
    return other == null
        ? box
        : new Piece.Box(Math.max(box.aroundMm(), other.aroundMm()), box.alongMm());
  }

  boolean isMixed() {
    return !upper.name().equals(lower.name());
  }

  /** Finished measurements in mm: those of the underband in its own size, the rest in the upper. */
  Map<String, Double> finishedMm() {
    Set<String> lowerKeys = new HashSet<>(Set.of(LOWER_GIRTH));
    for (Piece piece : cut.pieces()) {
      if (isLower(piece)) {
        piece.edges().forEach(edge -> edge.length().ifPresent(lowerKeys::add));
      }
    }
    Map<String, Double> finished = new HashMap<>(upperMm);
    lowerKeys.stream()
        .filter(lowerMm::containsKey)
        .forEach(key -> finished.put(key, lowerMm.get(key)));
    return finished;
  }

  /** The edges of upper pieces that must come out in the lower size. */
  List<Blend> blends(UnitSystem units, Wording wording) {
    List<Blend> blends = new ArrayList<>();
    for (Piece piece : isMixed() ? cut.pieces() : List.<Piece>of()) {
      for (Edge edge : blended(piece)) {
        blends.add(blend(piece, edge, units, wording));
      }
    }
    return blends;
  }

  private List<Edge> blended(Piece piece) {
    if (isLower(piece)) {
      return List.of();
    }
    return piece.edges().stream()
        .filter(
            edge ->
                meetsLower(edge)
                    || noLowerPiece()
                        && edge.crosses().contains("bust")
                        && !cut.partners(edge).isEmpty())
        .toList();
  }

  private boolean meetsLower(Edge edge) {
    return cut.partners(edge).stream()
        .anyMatch(ref -> cut.piece(ref.piece()).map(this::isLower).orElse(false));
  }

  private boolean noLowerPiece() {
    return cut.pieces().stream().noneMatch(this::isLower);
  }

  private Blend blend(Piece piece, Edge edge, UnitSystem units, Wording wording) {
    String name = Texts.words(edge.id());
    CutPlan.Amount from = null;
    CutPlan.Amount to = null;
    if (edge.length().isPresent() && meetsLower(edge)) {
      from = Texts.amount(upperMm.get(edge.length().get()) * edge.part(), units);
      to = Texts.amount(lowerMm.get(edge.length().get()) * edge.part(), units);
    }
    String key = from == null ? "plan-blend-side" : "plan-blend-edge";
    return new Blend(
        piece.name(),
        name,
        from,
        to,
        wording.say(
            key,
            "piece",
            piece.name(),
            "edge",
            name,
            "upper",
            upper.name(),
            "lower",
            lower.name(),
            "from",
            from == null ? "" : from.text(),
            "to",
            to == null ? "" : to.text()));
  }
}
