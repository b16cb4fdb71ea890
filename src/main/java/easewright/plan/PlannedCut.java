package easewright.plan;

import easewright.layout.Packing;
import easewright.pattern.Cut;
import easewright.pattern.Layer;
import easewright.pattern.Piece;
import easewright.plan.Laying.Lain;
import easewright.rulebook.RuleBookSource;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The result for one set of choices: the pieces in their sizes, and the layout on each cloth.
 *
 * @param pieces what is cut, in the order of the sheet
 * @param lain the layouts, by the layer whose cloth it is; only for cloths and boxes that were
 *     given
 */
record PlannedCut(
    Cut cut, Mixing sizes, AppliedChanges changes, List<SizedPiece> pieces, Map<Layer, Lain> lain) {

  /** Caches layouts, so that options that change nothing cost nothing. */
  static Laying laying(RuleBookSource book) {
    return new Laying(
        new Packing((int) book.parameter("layouts-tried"), 1), book.parameter("cutting-room"));
  }

  static PlannedCut of(CutRequest request, RuleBookSource book, ChangeBook ways, Laying laying) {
    Cut cut = request.sheet().cut(request.choices());
    Mixing sizes = new Mixing(request, cut);
    AppliedChanges changes = new AppliedChanges(book, ways, request, cut);
    boolean recut = !request.accepted().isEmpty() && !request.everything();
    List<SizedPiece> pieces =
        cut.pieces().stream()
            .filter(piece -> !recut || changes.needsCloth(piece))
            .map(piece -> sized(piece, sizes, changes))
            .toList();
    return new PlannedCut(cut, sizes, changes, pieces, lain(request, pieces, laying));
  }

  private static SizedPiece sized(Piece piece, Mixing sizes, AppliedChanges changes) {
    return new SizedPiece(piece, sizes.size(piece), changes.box(piece, sizes.box(piece)));
  }

  private static Map<Layer, Lain> lain(CutRequest request, List<SizedPiece> pieces, Laying laying) {
    Map<Layer, List<SizedPiece>> bySource = new TreeMap<>(Comparator.naturalOrder());
    for (SizedPiece piece : pieces) {
      bySource
          .computeIfAbsent(request.source(piece.piece().layer()), l -> new java.util.ArrayList<>())
          .add(piece);
    }
    Map<Layer, Lain> lain = new EnumMap<>(Layer.class);
    bySource.forEach(
        (source, onIt) -> {
          Cloth cloth = request.cloths().get(source);
          if (cloth != null && onIt.stream().allMatch(one -> one.box() != null)) {
            lain.put(source, laying.lay(source, cloth, onIt));
          }
        });
    return lain;
  }

  /** The length to buy of each cloth, in mm. */
  Map<Layer, Double> buyMm(CutRequest request, Buying buying) {
    Map<Layer, Double> buy = new EnumMap<>(Layer.class);
    lain.forEach(
        (source, one) ->
            buy.put(source, buying.buyMm(request.cloths().get(source), one.lengthMm())));
    return buy;
  }
}
