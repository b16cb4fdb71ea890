package easewright.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * The seams of a sheet with names resolved to array indices, so that every combination of choices
 * can be checked in every size by arithmetic alone.
 */
final class SeamSides {

  /** One side of a seam, including both halves of a fold and both pieces of a pair. */
  static final class Side {
    final int piece;
    final int at;
    final Edge edge;
    final int occurrences;
    final int measurement;
    final List<Side> partners = new ArrayList<>();

    private Side(int piece, int at, Edge edge, int occurrences, int measurement) {
      this.piece = piece;
      this.at = at;
      this.edge = edge;
      this.occurrences = occurrences;
      this.measurement = measurement;
    }

    int partnersCut(boolean[] cut) {
      int number = 0;
      for (Side partner : partners) {
        number += cut[partner.piece] ? 1 : 0;
      }
      return number;
    }

    boolean before(Side other) {
      return piece < other.piece || piece == other.piece && at < other.at;
    }

    int notches() {
      return edge.notches() * occurrences;
    }
  }

  private final List<Side> sides = new ArrayList<>();
  private final List<String> names;
  private final double[][] finishedMm;
  private final Map<OptionRef, double[]> changesMm = new HashMap<>();

  SeamSides(PatternSheet sheet) {
    names = List.copyOf(new TreeSet<>(sheet.sizes().get(0).finishedMm().keySet()));
    finishedMm =
        sheet.sizes().stream()
            .map(size -> names.stream().mapToDouble(n -> size.finishedMm().get(n)).toArray())
            .toArray(double[][]::new);
    for (SheetChoice choice : sheet.choices()) {
      for (SheetChoice.Option option : choice.options()) {
        changesMm.put(
            new OptionRef(choice.id(), option.id()),
            names.stream()
                .mapToDouble(name -> option.changesMm().getOrDefault(name, 0.0))
                .toArray());
      }
    }
    Map<Edge.Ref, Side> byRef = new HashMap<>();
    for (int i = 0; i < sheet.pieces().size(); i++) {
      Piece piece = sheet.pieces().get(i);
      for (int j = 0; piece.follows().isEmpty() && j < piece.edges().size(); j++) {
        Edge edge = piece.edges().get(j);
        int measurement = edge.length().map(names::indexOf).orElse(-1);
        Side side = new Side(i, j, edge, piece.occurrences(), measurement);
        sides.add(side);
        byRef.put(new Edge.Ref(piece.id(), edge.id()), side);
      }
    }
    sides.forEach(side -> side.edge.sewnTo().forEach(ref -> side.partners.add(byRef.get(ref))));
  }

  List<Side> all() {
    return sides;
  }

  int measurements() {
    return names.size();
  }

  /** What a combination of choices adds to every measurement, in mm. */
  void changes(Map<String, String> way, double[] into) {
    Arrays.fill(into, 0);
    way.forEach(
        (choice, option) -> {
          double[] added = changesMm.get(new OptionRef(choice, option));
          for (int i = 0; i < into.length; i++) {
            into[i] += added[i];
          }
        });
  }

  /** Length of the whole side in a size, in mm. */
  double sewnMm(Side side, int size, double[] changes) {
    int m = side.measurement;
    return (finishedMm[size][m] + changes[m]) * side.edge.part() * side.occurrences;
  }
}
