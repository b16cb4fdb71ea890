package easewright.plan;

import easewright.pattern.Cut;
import easewright.pattern.Edge;
import easewright.pattern.Piece;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A seam: every edge it joins. Edges of one id are one seam, as left and right side seam are, and
 * so are the edges that one long edge is sewn to.
 *
 * @param sides the edges, in the order of the sheet
 */
record Seam(List<Side> sides) {

  /** An edge of a piece. */
  record Side(Piece piece, Edge edge) {

    /** The edges of all pieces but those that follow another. */
    static Stream<Side> all(Cut cut) {
      return cut.pieces().stream()
          .filter(piece -> piece.follows().isEmpty())
          .flatMap(piece -> piece.edges().stream().map(edge -> new Side(piece, edge)));
    }

    /** Those that are sewn to no other. */
    static Stream<Side> open(Cut cut) {
      return all(cut).filter(side -> cut.partners(side.edge()).isEmpty());
    }

    /** The edges that meet it at a corner, if the sheet goes round the piece as it should. */
    List<Side> neighbours() {
      List<Edge> round = piece.edges();
      int at = round.indexOf(edge);
      List<Side> neighbours = new ArrayList<>();
      for (int next : new int[] {at - 1, at + 1}) {
        // Between the last edge and the first of a half lies the fold.
        if (!piece.onFold() || next >= 0 && next < round.size()) {
          neighbours.add(new Side(piece, round.get(Math.floorMod(next, round.size()))));
        }
      }
      return neighbours;
    }

    boolean isSewnTo(Side other) {
      return edge.sewnTo().contains(new Edge.Ref(other.piece().id(), other.edge().id()));
    }
  }

  /** The seams of the pieces cut, without those of pieces that follow another. */
  static List<Seam> of(Cut cut) {
    List<Side> sides = Side.all(cut).filter(side -> !cut.partners(side.edge()).isEmpty()).toList();
    List<List<Side>> seams = new ArrayList<>();
    for (Side side : sides) {
      List<Side> joined = new ArrayList<>();
      for (List<Side> seam : List.copyOf(seams)) {
        if (seam.stream().anyMatch(one -> isOfOneSeam(one, side))) {
          joined.addAll(seam);
          seams.remove(seam);
        }
      }
      joined.add(side);
      seams.add(joined);
    }
    Comparator<Side> inOrder = Comparator.comparingInt(sides::indexOf);
    return seams.stream()
        .map(seam -> new Seam(seam.stream().sorted(inOrder).toList()))
        .sorted(Comparator.comparing(seam -> seam.sides().get(0), inOrder))
        .toList();
  }

  private static boolean isOfOneSeam(Side one, Side other) {
    return one.edge().id().equals(other.edge().id()) || one.isSewnTo(other) || other.isSewnTo(one);
  }

  /** The id most of its edges have; the first of these. */
  String id() {
    Map<String, Long> counted =
        sides.stream()
            .collect(
                Collectors.groupingBy(
                    side -> side.edge().id(), LinkedHashMap::new, Collectors.counting()));
    long most = counted.values().stream().mapToLong(count -> count).max().orElseThrow();
    return counted.entrySet().stream()
        .filter(one -> one.getValue() == most)
        .findFirst()
        .orElseThrow()
        .getKey();
  }

  boolean touches(Piece piece) {
    return sides.stream().anyMatch(side -> side.piece().equals(piece));
  }

  /** The edges that one of its edges is sewn to. */
  List<Side> partners(Side side) {
    return sides.stream().filter(side::isSewnTo).toList();
  }

  /**
   * Whether it ends in the other seam, which runs on over both pieces that it joins: it could not
   * be sewn any more once the other is closed.
   */
  boolean mustPrecede(Seam other) {
    for (Side one : sides) {
      for (Side two : sides) {
        if (one.isSewnTo(two) && other.runsOver(one, two)) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean runsOver(Side one, Side two) {
    return one.neighbours().stream()
        .filter(sides::contains)
        .anyMatch(
            first ->
                two.neighbours().stream()
                    .filter(sides::contains)
                    .anyMatch(second -> !first.isSewnTo(second)));
  }
}
