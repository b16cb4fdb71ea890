package easewright.pattern;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Looks at the seams of a sheet, once for every way of choosing. Names in it are already sound. */
final class SeamCheck {

  // Half of what a tape shows: rounding of graded steps, not a notch missed.
  private static final double EQUAL_MM = 1.5;

  // Keeps the largest legal sheet within a second.
  static final int MOST_COMBINATIONS = 96;

  private final PatternSheet sheet;
  private final SheetNode root;
  private final Set<SheetFault> seen = new HashSet<>();

  SeamCheck(PatternSheet sheet, SheetNode root) {
    this.sheet = sheet;
    this.root = root;
  }

  void run() {
    references();
    if (!seen.isEmpty()) {
      return;
    }
    long ways = 1;
    for (Choice choice : sheet.choices()) {
      ways *= choice.options().size();
    }
    if (ways > MOST_COMBINATIONS) {
      fault(
          root.at("choices"),
          "The choices combine in " + ways + " ways; at most " + MOST_COMBINATIONS + " are read.",
          "Offer fewer choices, or split the pattern into two sheets.");
      return;
    }
    combinations(0, new LinkedHashMap<>());
  }

  private void references() {
    for (int i = 0; i < sheet.pieces().size(); i++) {
      Piece piece = sheet.pieces().get(i);
      if (piece.follows().isPresent()) {
        continue;
      }
      for (int j = 0; j < piece.edges().size(); j++) {
        Edge edge = piece.edges().get(j);
        SheetNode node = root.each("pieces").get(i).each("edges").get(j);
        if (edge.sewnTo().isEmpty() && edge.finish().isEmpty()) {
          fault(
              node,
              "The edge '" + edge.id() + "' is sewn to nothing and has no finish.",
              "Say what it is sewn to, or how it is finished.");
        }
        Edge.Ref here = new Edge.Ref(piece.id(), edge.id());
        for (int k = 0; k < edge.sewnTo().size(); k++) {
          reference(node.each("sewnTo").get(k), here, edge, edge.sewnTo().get(k));
        }
      }
    }
  }

  private void reference(SheetNode node, Edge.Ref here, Edge edge, Edge.Ref there) {
    Optional<Edge> partner =
        sheet.pieces().stream()
            .filter(piece -> piece.id().equals(there.piece()))
            .findFirst()
            .flatMap(piece -> piece.edge(there.edge()));
    if (partner.isEmpty()) {
      fault(node, "There is no edge '" + there + "'.", "Name a piece and an edge it has.");
    } else if (!partner.get().sewnTo().contains(here)) {
      fault(
          node,
          "The edge '" + there + "' is not sewn back to '" + here + "'.",
          "Name each of the two under the other's 'sewnTo'.");
    } else if (!Set.copyOf(partner.get().crosses()).equals(Set.copyOf(edge.crosses()))) {
      fault(
          node,
          "The edges '" + here + "' and '" + there + "' do not cross the same girths.",
          "Name the same girths under 'crosses' of both.");
    }
  }

  private void combinations(int depth, Map<String, String> chosen) {
    if (depth < sheet.choices().size()) {
      Choice choice = sheet.choices().get(depth);
      for (Choice.Option option : choice.options()) {
        chosen.put(choice.id(), option.id());
        combinations(depth + 1, chosen);
      }
      chosen.remove(choice.id());
      return;
    }
    boolean allowed =
        sheet.choices().stream()
            .allMatch(c -> c.option(chosen.get(c.id())).orElseThrow().allowedBy(chosen));
    if (allowed) {
      combination(chosen);
    } else if (sheet.choices().stream()
        .allMatch(c -> c.defaultOption().equals(chosen.get(c.id())))) {
      fault(
          root.at("choices"),
          "The default options cannot stand together.",
          "Choose defaults that require and exclude nothing of each other.");
    }
  }

  private void combination(Map<String, String> chosen) {
    Cut cut = sheet.cut(chosen);
    for (String role : List.of("front", "back")) {
      if (cut.pieces().stream().noneMatch(p -> p.role().equals(role) && p.layer() == Layer.MAIN)) {
        fault(
            root.at("pieces"),
            "No main piece with the role '" + role + "' is cut under " + chosen + ".",
            "Add the piece, or widen its 'when'.");
      }
    }
    List<Map<String, Double>> finished = new ArrayList<>();
    sheet.sizes().forEach(size -> finished.add(sheet.finishedMm(size, chosen)));
    for (Piece piece : cut.pieces()) {
      if (piece.follows().isEmpty()) {
        piece.edges().forEach(edge -> edge(cut, piece, edge, finished, chosen));
      }
    }
  }

  private void edge(
      Cut cut,
      Piece piece,
      Edge edge,
      List<Map<String, Double>> finished,
      Map<String, String> chosen) {
    List<Side> partners = sides(cut, edge);
    if (partners.isEmpty() && edge.finish().isEmpty()) {
      fault(
          node(piece, edge),
          "The edge '" + edge.id() + "' is sewn to nothing under " + chosen + ".",
          "Add the edge it is sewn to then, or how it is finished.");
    }
    // Seen from the one long edge that several short ones are sewn to, or from either of a pair.
    boolean measured =
        edge.length().isPresent()
            && partners.stream()
                .allMatch(p -> p.edge.length().isPresent() && cut.partners(p.edge).size() == 1);
    if (partners.isEmpty() || !measured) {
      return;
    }
    Side own = new Side(piece, edge);
    for (int i = 0; i < finished.size(); i++) {
      double here = own.sewnMm(finished.get(i));
      double there = 0;
      for (Side partner : partners) {
        there += partner.sewnMm(finished.get(i));
      }
      if (Math.abs(here - there) > EQUAL_MM * piece.occurrences()) {
        fault(
            node(piece, edge),
            String.format(
                Locale.ROOT,
                "The edge '%s' is %.0f mm in size '%s', what it is sewn to %.0f mm.",
                edge.id(),
                here,
                sheet.sizes().get(i).name(),
                there),
            "Give edges that are sewn together the same length in every size.");
        return;
      }
    }
  }

  /** One side of a seam, both halves of a fold and all of a pair together. */
  private record Side(Piece piece, Edge edge) {
    double sewnMm(Map<String, Double> finishedMm) {
      return finishedMm.get(edge.length().orElseThrow()) * edge.part() * piece.occurrences();
    }
  }

  private static List<Side> sides(Cut cut, Edge edge) {
    List<Side> sides = new ArrayList<>();
    for (Edge.Ref ref : cut.partners(edge)) {
      Piece piece = cut.piece(ref.piece()).orElseThrow();
      sides.add(new Side(piece, piece.edge(ref.edge()).orElseThrow()));
    }
    return sides;
  }

  private SheetNode node(Piece piece, Edge edge) {
    int at = sheet.pieces().indexOf(piece);
    return root.each("pieces").get(at).each("edges").get(piece.edges().indexOf(edge));
  }

  // The same fault shows under many choices; the first of each place and kind is enough.
  private void fault(SheetNode node, String problem, String remedy) {
    if (seen.add(new SheetFault(node.pointer(), "", remedy))) {
      node.fault(problem, remedy);
    }
  }
}
