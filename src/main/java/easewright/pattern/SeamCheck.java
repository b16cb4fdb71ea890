package easewright.pattern;

import easewright.deadline.Deadline;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Checks the seams of a sheet for every combination of choices. Names have already been checked.
 */
final class SeamCheck {

  // Half of a tape's resolution: allows rounding of graded steps, but not a missed notch.
  private static final double EQUAL_MM = 1.5;

  private final PatternSheet sheet;
  private final SheetNode root;
  private final List<Map<String, String>> ways;
  private final SeamSides sides;
  private final Set<SheetFault> seen = new HashSet<>();

  /**
   * @param ways the combinations of choices that the options allow
   */
  SeamCheck(PatternSheet sheet, SheetNode root, List<Map<String, String>> ways) {
    this.sheet = sheet;
    this.root = root;
    this.ways = ways;
    this.sides = new SeamSides(sheet);
  }

  void run() {
    boolean[] cut = new boolean[sheet.pieces().size()];
    double[] changes = new double[sides.measurements()];
    for (Map<String, String> way : ways) {
      Deadline.check();
      for (int i = 0; i < cut.length; i++) {
        cut[i] = sheet.pieces().get(i).when().holds(way);
      }
      sides.changes(way, changes);
      roles(cut, way);
      for (SeamSides.Side side : sides.all()) {
        if (cut[side.piece]) {
          side(side, cut, changes, way);
        }
      }
    }
  }

  private void roles(boolean[] cut, Map<String, String> way) {
    for (String role : List.of("front", "back")) {
      boolean there = false;
      for (int i = 0; i < cut.length; i++) {
        Piece piece = sheet.pieces().get(i);
        there |= cut[i] && piece.role().equals(role) && piece.layer() == Layer.MAIN;
      }
      if (!there) {
        fault(
            root.at("pieces"),
            "No main piece with the role '" + role + "' is cut under " + Ways.said(way) + ".",
            "Add the piece with that role, or widen its 'when'.",
            role);
      }
    }
  }

  private void side(SeamSides.Side side, boolean[] cut, double[] changes, Map<String, String> way) {
    List<SeamSides.Side> partners = new ArrayList<>();
    boolean certain = side.edge.finish().isPresent();
    // From the one long edge that several short ones are sewn to, or from either of a pair.
    boolean whole = true;
    for (SeamSides.Side partner : side.partners) {
      if (cut[partner.piece]) {
        partners.add(partner);
        certain |= sheet.pieces().get(partner.piece).leftOut().isEmpty();
        whole &= partner.partnersCut(cut) == 1;
      }
    }
    if (partners.isEmpty() && !certain) {
      fault(
          node(side),
          "The edge '" + side.edge.id() + "' is sewn to nothing under " + Ways.said(way) + ".",
          "Add the edge it is sewn to then, or how it is finished.",
          "");
    } else if (!certain) {
      fault(
          node(side),
          "All that the edge '" + side.edge.id() + "' is sewn to may be left out.",
          "Say how it is finished then.",
          "");
    }
    // Both sides of a pair would report the same.
    if (!partners.isEmpty() && whole && !(partners.size() == 1 && partners.get(0).before(side))) {
      notches(side, partners);
      lengths(side, partners, changes);
    }
  }

  private void notches(SeamSides.Side side, List<SeamSides.Side> partners) {
    int here = side.notches();
    int there = partners.stream().mapToInt(SeamSides.Side::notches).sum();
    if (here != there) {
      fault(
          node(side),
          "The edge '"
              + side.edge.id()
              + "' has "
              + here
              + " notches on the garment, what it is sewn to has "
              + there
              + ".",
          "Give edges that are sewn together the same notches.",
          "");
    }
  }

  private void lengths(SeamSides.Side side, List<SeamSides.Side> partners, double[] changes) {
    if (side.measurement < 0 || partners.stream().anyMatch(partner -> partner.measurement < 0)) {
      return;
    }
    for (int size = 0; size < sheet.sizes().size(); size++) {
      double here = sides.sewnMm(side, size, changes);
      double there = 0;
      for (SeamSides.Side partner : partners) {
        there += sides.sewnMm(partner, size, changes);
      }
      if (Math.abs(here - there) > EQUAL_MM * side.occurrences) {
        fault(
            node(side),
            String.format(
                Locale.ROOT,
                "The edge '%s' is %.0f mm in size '%s', what it is sewn to %.0f mm.",
                side.edge.id(),
                here,
                sheet.sizes().get(size).name(),
                there),
            "Give edges that are sewn together the same length in every size.",
            "");
        return;
      }
    }
  }

  private SheetNode node(SeamSides.Side side) {
    return root.each("pieces").get(side.piece).each("edges").get(side.at);
  }

  // The same fault occurs under many choices; reports the first of each place and kind.
  private void fault(SheetNode node, String problem, String remedy, String kind) {
    if (seen.add(new SheetFault(node.pointer(), kind, remedy))) {
      node.fault(problem, remedy);
    }
  }
}
