package easewright.pattern;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Reads a sheet with every check there is: bounds, schema, names, seams, sense. */
final class SheetChecks {
  /**
   * Building the schema is slow and only uploaded sheets need it, so it is built for the first one.
   */
  private static final class OnDemand {
    private static final SheetSchema SCHEMA = new SheetSchema();
  }

  private SheetChecks() {}

  /**
   * Reads a sheet from parsed JSON.
   *
   * @throws SheetFaults with every fault found; structural faults come before semantic ones
   */
  static PatternSheet read(JsonNode json) {
    List<SheetFault> faults = new ArrayList<>(SheetBounds.faults(json));
    if (faults.isEmpty()) {
      faults.addAll(OnDemand.SCHEMA.faults(json));
    }
    if (!faults.isEmpty()) {
      throw new SheetFaults(faults);
    }
    SheetNode root = new SheetNode(json, "", faults);
    PatternSheet sheet = SheetReader.read(root);
    if (whole(sheet, root)) {
      int before = faults.size();
      SheetCheck check = new SheetCheck(sheet, root);
      check.names();
      new SeamNames(sheet, root).run();
      // Comparing seams requires valid names.
      if (faults.size() == before) {
        everyWay(sheet, root);
      }
      check.sense();
      new PieceCheck(sheet, root).run();
      new TrimCheck(sheet, root).run();
    }
    if (!faults.isEmpty()) {
      throw new SheetFaults(faults);
    }
    return sheet;
  }

  private static void everyWay(PatternSheet sheet, SheetNode root) {
    long ways = Ways.count(sheet.choices());
    if (ways > Ways.MOST) {
      root.at("choices").fault("too-many-ways", "ways", ways, "most", Ways.MOST);
      return;
    }
    List<Map<String, String>> allowed = Ways.allowed(sheet.choices());
    new ReachCheck(sheet, root, allowed).run();
    new SeamCheck(sheet, root, allowed).run();
  }

  // A part the reader rejected would shift the positions of later ones, or leave a gap.
  private static boolean whole(PatternSheet sheet, SheetNode root) {
    List<SheetNode> pieces = root.each("pieces");
    if (sheet.sizes().isEmpty()
        || sheet.pieces().size() != pieces.size()
        || sheet.trims().size() != root.each("trims").size()
        || sheet.sizes().stream().map(size -> size.finishedMm().keySet()).distinct().count() > 1) {
      return false;
    }
    for (int i = 0; i < pieces.size(); i++) {
      Piece piece = sheet.pieces().get(i);
      if (piece.follows().isEmpty() && piece.edges().size() != pieces.get(i).each("edges").size()) {
        return false;
      }
    }
    return true;
  }
}
