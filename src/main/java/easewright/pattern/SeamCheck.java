package easewright.pattern;

import easewright.deadline.Deadline;
import easewright.measure.Rounded;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
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
        fault(root.at("pieces"), role, "role-not-cut", "role", role, "way", Ways.said(way));
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
          "",
          "edge-sewn-to-nothing-under",
          "edge",
          side.edge.id(),
          "way",
          Ways.said(way));
    } else if (!certain) {
      fault(node(side), "", "edge-sewn-to-what-may-be-left-out", "edge", side.edge.id());
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
      fault(node(side), "", "notches-unlike", "edge", side.edge.id(), "here", here, "there", there);
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
            "",
            "lengths-unlike",
            "edge",
            side.edge.id(),
            "here",
            Rounded.text(here, 0),
            "size",
            sheet.sizes().get(size).name(),
            "there",
            Rounded.text(there, 0));
        return;
      }
    }
  }

  private SheetNode node(SeamSides.Side side) {
    return root.each("pieces").get(side.piece).each("edges").get(side.at);
  }

  // The same fault shows under many choices; the first of each place and kind is enough.
  private void fault(SheetNode node, String kind, String key, Object... blanks) {
    if (seen.add(new SheetFault(node.pointer(), kind, key))) {
      node.fault(key, blanks);
    }
  }
}
