package easewright.plan;

import easewright.measure.UnitSystem;
import easewright.pattern.Layer;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.rulebook.RuleBookSource;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Requests on the shipped sheets, and the planner that answers them. */
final class Planned {
  static final RuleBookSource BOOK = RuleBookSource.read(Path.of("rules"));
  static final CutPlanner PLANNER = new CutPlanner(BOOK);
  static final PatternSheets SHEETS = new PatternSheets();
  static final Cloth WIDE =
      new Cloth(1500, Cloth.Lay.EITHER, false, Cloth.GreatestStretch.CROSSWISE, 0.05, null);

  private Planned() {}

  static CutRequest quillmere(List<AcceptedChange> accepted, boolean everything) {
    return request(
        SHEETS.find("quillmere-top").orElseThrow(), "75C", Map.of(), WIDE, accepted, everything);
  }

  static CutRequest request(
      PatternSheet sheet,
      String size,
      Map<String, String> choices,
      Cloth cloth,
      List<AcceptedChange> accepted,
      boolean everything) {
    return new CutRequest(
        UnitSystem.METRIC,
        sheet,
        size,
        size,
        choices,
        Map.of(Layer.MAIN, cloth, Layer.LINING, cloth, Layer.SUPPORT, cloth),
        Map.of(),
        accepted,
        everything);
  }

  /** Every combination of choices that a sheet allows. */
  static List<Map<String, String>> ways(PatternSheet sheet) {
    List<Map<String, String>> ways = new ArrayList<>(List.of(Map.of()));
    for (var choice : sheet.choices()) {
      List<Map<String, String>> longer = new ArrayList<>();
      for (Map<String, String> way : ways) {
        for (var option : choice.options()) {
          Map<String, String> more = new LinkedHashMap<>(way);
          more.put(choice.id(), option.id());
          longer.add(more);
        }
      }
      ways = longer;
    }
    return ways.stream().filter(way -> stands(sheet, way)).toList();
  }

  private static boolean stands(PatternSheet sheet, Map<String, String> way) {
    try {
      sheet.decided(way);
      return true;
    } catch (IllegalArgumentException conflict) {
      return false;
    }
  }
}
