package easewright.plan;

import easewright.layout.LaidPart;
import easewright.layout.Layout;
import easewright.layout.Packing;
import easewright.layout.Placed;
import easewright.pattern.Grain;
import easewright.pattern.Layer;
import easewright.pattern.Piece;
import easewright.pattern.StretchDirection;
import easewright.plan.Cloth.GreatestStretch;
import easewright.plan.Cloth.Lay;
import easewright.plan.CutPlan.LaidPiece;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Lays the pieces of one cloth on its folded or full width, respecting stretch and nap. */
final class Laying {
  private final Packing packing;
  private final double roomMm;
  private final Map<List<Object>, Layout> found = new HashMap<>();

  Laying(Packing packing, double roomMm) {
    this.packing = packing;
    this.roomMm = roomMm;
  }

  /**
   * A layout of pieces.
   *
   * @param lay folded or open
   * @param layWidthMm the width used for laying
   * @param lengthMm the length they use
   * @param use the part of it that pieces cover
   */
  record Lain(Lay lay, double layWidthMm, double lengthMm, double use, List<LaidPiece> pieces) {}

  /** A paper piece to lay, and how it is cut. */
  private record Paper(
      SizedPiece piece,
      LaidPart part,
      int layers,
      boolean quarter,
      boolean faceDown,
      boolean opened) {}

  /**
   * The shortest layout the cloth allows; if equal, the folded one, which is quicker to cut.
   *
   * @throws CannotBeCut if a piece is too wide for the cloth
   */
  Lain lay(Layer source, Cloth cloth, List<SizedPiece> pieces) {
    Lain best = null;
    CannotBeCut tooWide = null;
    for (Lay lay : List.of(Lay.FOLDED, Lay.OPEN)) {
      boolean asked = cloth.lay() == Lay.EITHER || cloth.lay() == lay;
      if (asked && (lay == Lay.OPEN || foldable(cloth, pieces))) {
        try {
          Lain lain = lain(source, cloth, lay, pieces);
          best = best == null || lain.lengthMm() < best.lengthMm() - 0.5 ? lain : best;
        } catch (CannotBeCut narrow) {
          tooWide = narrow;
        }
      }
    }
    if (best == null && tooWide == null) {
      return lain(source, cloth, Lay.OPEN, pieces);
    }
    if (best == null) {
      throw tooWide;
    }
    return best;
  }

  /** A half drawn for the fold fits a lengthwise fold only if its fold line runs lengthwise. */
  static boolean foldable(Cloth cloth, List<SizedPiece> pieces) {
    return pieces.stream().noneMatch(one -> one.piece().onFold() && quarter(one.piece(), cloth));
  }

  /** Whether the piece must be turned on this cloth; stretch takes precedence over grain. */
  private static boolean quarter(Piece piece, Cloth cloth) {
    return switch (cloth.stretch()) {
      case LENGTHWISE -> piece.stretch() == StretchDirection.AROUND;
      case CROSSWISE -> piece.stretch() == StretchDirection.ALONG;
      case BOTH -> piece.grain() == Grain.AROUND;
    };
  }

  private Lain lain(Layer source, Cloth cloth, Lay lay, List<SizedPiece> pieces) {
    double width = lay == Lay.FOLDED ? cloth.widthMm() / 2 : cloth.widthMm();
    List<Paper> papers = new ArrayList<>();
    for (SizedPiece piece : pieces) {
      papers.addAll(papers(piece, cloth, lay));
    }
    for (Paper paper : papers) {
      if (paper.part().narrowest() - roomMm > width) {
        double needed = (paper.part().narrowest() - roomMm) * (lay == Lay.FOLDED ? 2 : 1);
        throw new CannotBeCut(source, paper.piece().piece().name(), needed);
      }
    }
    List<LaidPart> parts = papers.stream().map(Paper::part).toList();
    Layout layout =
        found.computeIfAbsent(
            List.of(width, counted(parts)), key -> packing.lay(width + roomMm, parts));
    List<LaidPiece> laid = laid(layout, papers);
    double length = laid.stream().mapToDouble(one -> one.y() + one.length()).max().orElse(0);
    double covered = laid.stream().mapToDouble(one -> one.width() * one.length()).sum();
    return new Lain(lay, width, length, length == 0 ? 0 : covered / (width * length), laid);
  }

  private static Map<LaidPart, Integer> counted(List<LaidPart> parts) {
    Map<LaidPart, Integer> counted = new HashMap<>();
    parts.forEach(part -> counted.merge(part, 1, Integer::sum));
    return counted;
  }

  private List<Paper> papers(SizedPiece sized, Cloth cloth, Lay lay) {
    Piece piece = sized.piece();
    boolean opened = piece.onFold() && lay == Lay.OPEN;
    double around = sized.box().aroundMm() * (opened ? 2 : 1);
    double along = sized.box().alongMm();
    boolean quarter = quarter(piece, cloth);
    boolean atFold = piece.onFold() && lay == Lay.FOLDED;
    boolean even = cloth.stretch() == GreatestStretch.BOTH || piece.grain() == Grain.ANY;
    boolean free = even && !cloth.napOneWay() && !atFold;
    boolean twice = lay == Lay.FOLDED && !piece.onFold();
    LaidPart part =
        new LaidPart(
            piece.id(),
            (quarter ? along : around) + roomMm,
            (quarter ? around : along) + roomMm,
            free,
            atFold);
    List<Paper> papers = new ArrayList<>();
    for (int left = piece.count(); left > 0; left -= twice ? 2 : 1) {
      int layers = atFold || twice && left > 1 ? 2 : 1;
      boolean faceDown = !twice && piece.mirrored() && left % 2 == 1;
      papers.add(new Paper(sized, part, layers, quarter, faceDown, opened));
    }
    return papers;
  }

  private List<LaidPiece> laid(Layout layout, List<Paper> papers) {
    Map<LaidPart, Deque<Paper>> waiting = new HashMap<>();
    papers.forEach(
        paper -> waiting.computeIfAbsent(paper.part(), p -> new ArrayDeque<>()).add(paper));
    List<LaidPiece> laid = new ArrayList<>();
    List<Placed> inOrder = new ArrayList<>(layout.placed());
    inOrder.sort(Comparator.comparingDouble(Placed::y).thenComparingDouble(Placed::x));
    for (Placed placed : inOrder) {
      Paper paper = waiting.get(placed.part()).poll();
      Piece piece = paper.piece().piece();
      laid.add(
          new LaidPiece(
              laid.size() + 1,
              piece.id(),
              piece.name(),
              Texts.words(piece.layer().name()),
              placed.x(),
              placed.y(),
              placed.width() - roomMm,
              placed.length() - roomMm,
              placed.turned() != paper.quarter(),
              placed.part().atEdge(),
              paper.layers(),
              paper.faceDown(),
              paper.opened()));
    }
    return laid;
  }
}
