package easewright.plan;

import easewright.pattern.Cut;
import easewright.pattern.Layer;
import easewright.pattern.Piece;
import easewright.pattern.Trim;
import easewright.plan.Seam.Side;
import easewright.plan.SewnTrim.Turn;
import easewright.rulebook.SewingNotes;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What to sew first, second and so on: what lies flat before what is closed, each seam before one
 * that runs over its end, and elastic and fasteners over finished seams.
 */
final class SewingOrder {
  private static final String STRAP = "strap";

  private final Cut cut;
  private final List<SewnTrim> trims;
  private final List<Seam> seams;
  private final SewingWords words;

  /**
   * @param cut the pieces of the whole garment
   * @param trims what is sewn to them
   */
  SewingOrder(Cut cut, List<Trim> trims, SewingNotes notes, Wording wording) {
    this.cut = cut;
    this.trims = trims.stream().map(trim -> SewnTrim.of(cut, trim)).toList();
    this.seams = inOrder(Seam.of(cut), Comparator.comparingInt(seam -> notes.turn(seam.id())));
    this.words = new SewingWords(cut, wording);
  }

  /**
   * The steps.
   *
   * @param made ids of the pieces to sew: all, or those that are cut again
   */
  List<String> steps(Set<String> made) {
    Set<Piece> pieces = new LinkedHashSet<>();
    for (Piece piece : cut.pieces()) {
      if (made.contains(piece.id())) {
        pieces.add(piece.follows().flatMap(cut::piece).orElse(piece));
      }
    }
    List<Seam> sewn =
        seams.stream().filter(seam -> pieces.stream().anyMatch(seam::touches)).toList();
    List<String> steps = new ArrayList<>();
    if (made.size() < cut.pieces().size() && !sewn.isEmpty()) {
      steps.add(words.unpick(sewn));
    }
    pieces.stream().filter(this::isSewnOn).map(words::sewnOn).forEach(steps::add);
    pieces.stream().map(this::layers).flatMap(Optional::stream).forEach(steps::add);
    trims(Turn.STRAP, pieces).map(one -> words.trim("plan-sew-strap", one)).forEach(steps::add);
    finishes(pieces, true).map(words::finish).forEach(steps::add);
    sewn.forEach(seam -> steps.add(words.seam(seam, caughtIn(seam))));
    trims(Turn.EDGE, pieces).map(one -> words.trim("plan-sew-elastic", one)).forEach(steps::add);
    finishes(pieces, false).map(words::finish).forEach(steps::add);
    trims(Turn.CASING, pieces).map(one -> words.trim("plan-sew-casing", one)).forEach(steps::add);
    trims(Turn.FASTENER, pieces)
        .map(one -> words.trim("plan-sew-fastener", one))
        .forEach(steps::add);
    List<SewnTrim> rest = trims(Turn.ANYWHERE, pieces).toList();
    if (!rest.isEmpty()) {
      steps.add(words.rest(rest));
    }
    return steps;
  }

  private static List<Seam> inOrder(List<Seam> all, Comparator<Seam> usual) {
    List<Seam> left = new ArrayList<>(all);
    List<Seam> ordered = new ArrayList<>();
    while (!left.isEmpty()) {
      // Where each waits for another, as a sheet could ask by mistake, the usual order decides.
      Seam next =
          Stream.concat(
                  left.stream().filter(seam -> isNext(seam, left)).sorted(usual),
                  left.stream().sorted(usual))
              .findFirst()
              .orElseThrow();
      left.remove(next);
      ordered.add(next);
    }
    return ordered;
  }

  private static boolean isNext(Seam seam, List<Seam> left) {
    return left.stream().noneMatch(other -> !other.equals(seam) && other.mustPrecede(seam));
  }

  private Stream<SewnTrim> trims(Turn turn, Set<Piece> pieces) {
    return trims.stream().filter(one -> one.turn() == turn).filter(one -> one.isOn(pieces));
  }

  private List<SewnTrim> caughtIn(Seam seam) {
    return trims.stream().filter(one -> one.isCaughtIn(seam)).toList();
  }

  /** A pocket or the like, which no seam joins to another piece. */
  private boolean isSewnOn(Piece piece) {
    return !piece.edges().isEmpty() && seams.stream().noneMatch(seam -> seam.touches(piece));
  }

  /** Layers beneath a piece, the one nearest to it first. */
  private Optional<String> layers(Piece main) {
    List<Piece> beneath =
        cut.pieces().stream()
            .filter(piece -> piece.follows().equals(Optional.of(main.id())))
            .sorted(Comparator.comparing(piece -> piece.layer() == Layer.LINING))
            .toList();
    return beneath.isEmpty() ? Optional.empty() : Optional.of(words.layers(main, beneath));
  }

  /**
   * Open edges that are finished without a trim.
   *
   * @param ofStraps whether those of straps, which are narrow and finished by themselves, or others
   */
  private Stream<Side> finishes(Set<Piece> pieces, boolean ofStraps) {
    return Side.open(cut)
        .filter(side -> pieces.contains(side.piece()) && !isSewnOn(side.piece()))
        .filter(side -> side.edge().finish().isPresent())
        .filter(side -> side.piece().role().equals(STRAP) == ofStraps)
        .filter(side -> trims.stream().noneMatch(one -> one.covers(side)));
  }
}
