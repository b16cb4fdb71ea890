package easewright.plan;

import easewright.measure.UnitSystem;
import easewright.pattern.Edge;
import easewright.pattern.Layer;
import easewright.pattern.Piece;
import easewright.plan.CutPlan.Bundle;
import easewright.plan.CutPlan.EdgeTrim;
import easewright.plan.CutPlan.LayerCut;
import easewright.plan.CutPlan.PieceCut;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The cut list: cloth by cloth, layer by layer, piece by piece, and the bundles they make. */
record CutList(CutRequest request, List<SizedPiece> pieces, double liningTrimMm, Wording wording) {

  List<LayerCut> layers() {
    return Arrays.stream(Layer.values())
        .filter(layer -> !of(layer).isEmpty())
        .map(
            layer ->
                new LayerCut(
                    wire(layer),
                    wording.say("plan-layer-" + wire(layer)),
                    wire(request.source(layer)),
                    of(layer).stream().map(this::piece).toList()))
        .toList();
  }

  List<SizedPiece> of(Layer layer) {
    return pieces.stream().filter(one -> one.piece().layer() == layer).toList();
  }

  static String wire(Layer layer) {
    return Texts.words(layer.name());
  }

  private PieceCut piece(SizedPiece sized) {
    Piece piece = sized.piece();
    UnitSystem units = request.units();
    List<String> marks = new ArrayList<>(piece.lines().stream().map(Texts::words).toList());
    piece.edges().stream()
        .filter(edge -> edge.notches() > 0)
        .forEach(
            edge ->
                marks.add(
                    wording.say(
                        edge.notches() == 1 ? "plan-mark-notch" : "plan-mark-notches",
                        "count",
                        edge.notches(),
                        "edge",
                        Texts.words(edge.id()))));
    return new PieceCut(
        piece.id(),
        piece.name(),
        sized.size(),
        piece.count(),
        piece.onFold(),
        piece.mirrored(),
        wording.say(
            piece.onFold()
                ? "plan-cut-on-fold"
                : piece.mirrored() ? "plan-cut-pair" : "plan-cut-plain",
            "count",
            piece.count()),
        sized.box() == null ? null : Texts.amount(sized.box().aroundMm(), units),
        sized.box() == null ? null : Texts.amount(sized.box().alongMm(), units),
        Texts.marked(piece.seamAllowanceMm(), units),
        marks,
        trims(piece),
        piece.leftOut().orElse(null));
  }

  /** Edges the sheet says are cut smaller; for a lining also those that nothing is sewn to. */
  private List<EdgeTrim> trims(Piece piece) {
    boolean lining = piece.layer() == Layer.LINING && piece.follows().isPresent();
    List<EdgeTrim> trims = new ArrayList<>();
    for (Edge edge : piece.edges()) {
      Double stated = piece.smallerMm().get(edge.id());
      if (stated != null || lining && edge.sewnTo().isEmpty()) {
        CutPlan.Amount by = Texts.marked(stated == null ? liningTrimMm : stated, request.units());
        String name = Texts.words(edge.id());
        trims.add(
            new EdgeTrim(name, by, wording.say("plan-trim-lining", "edge", name, "by", by.text())));
      }
    }
    return trims;
  }

  List<Bundle> bundles(List<CutPlan.Supply> supplies) {
    List<Bundle> bundles = new ArrayList<>();
    for (LayerCut layer : layers()) {
      bundles.add(
          new Bundle(
              label(layer.name()),
              layer.pieces().stream()
                  .map(one -> wording.say("plan-times", "count", one.count(), "name", one.name()))
                  .toList()));
    }
    if (!supplies.isEmpty()) {
      bundles.add(
          new Bundle(
              label(wording.say("plan-bundle-supplies")),
              supplies.stream()
                  .map(one -> wording.say("plan-times", "count", one.count(), "name", one.name()))
                  .toList()));
    }
    return bundles;
  }

  private String label(String what) {
    String size =
        request.upperSize().equals(request.lowerSize())
            ? request.upperSize()
            : wording.say(
                "plan-two-sizes", "upper", request.upperSize(), "lower", request.lowerSize());
    return wording.say(
        "plan-bundle-label", "pattern", request.sheet().name(), "size", size, "what", what);
  }

  /** The steps in order. */
  List<String> order(List<CutPlan.Laid> layouts) {
    List<String> order = new ArrayList<>();
    if (pieces.isEmpty()) {
      return order;
    }
    order.add(wording.say("plan-order-wash"));
    for (CutPlan.Laid laid : layouts) {
      order.add(laid.says());
    }
    order.add(wording.say("plan-order-mark"));
    for (LayerCut layer : layers()) {
      List<String> names = new ArrayList<>();
      layer.pieces().stream().filter(PieceCut::onFold).forEach(one -> names.add(one.name()));
      layer.pieces().stream().filter(one -> !one.onFold()).forEach(one -> names.add(one.name()));
      order.add(
          wording.say("plan-order-cut", "layer", layer.name(), "pieces", String.join(", ", names)));
    }
    if (pieces.stream().anyMatch(one -> !trims(one.piece()).isEmpty())) {
      order.add(wording.say("plan-order-trim"));
    }
    order.add(wording.say("plan-order-elastic"));
    order.add(wording.say("plan-order-bundle"));
    return order;
  }
}
