package easewright.rulebook;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Drawings of signs and changes: {@code practice/drawings.yaml} for what families share, and {@code
 * drawings.yaml} in the folder of each. A drawing is 360 wide and 260 high, its middle at 180;
 * paths are SVG path data of the left half (SVG 1.1, section 8.3), which the right half mirrors.
 *
 * @param body outline of the body behind a garment, by view
 * @param garments the first stands for every pattern that has none of its own
 * @param scenes what lies there instead of a garment on a body
 * @param marks what can be drawn on either
 * @param signs ids of the marks that show a sign, by its id
 * @param changes ids of the marks that show a change, by the adjustment's id
 */
public record Drawings(
    Map<String, String> body,
    List<GarmentShape> garments,
    List<Scene> scenes,
    List<Mark> marks,
    Map<String, List<String>> signs,
    Map<String, List<String>> changes) {

  public Drawings {
    body = body == null ? Map.of() : body;
    garments = garments == null ? List.of() : garments;
    scenes = scenes == null ? List.of() : scenes;
    marks = marks == null ? List.of() : marks;
    signs = signs == null ? Map.of() : signs;
    changes = changes == null ? Map.of() : changes;
  }

  /** These with those of one family, which come first where both draw the same; null for none. */
  public Drawings with(Drawings own) {
    return own == null
        ? this
        : new Drawings(
            own.body.isEmpty() ? body : own.body,
            own.garments.isEmpty() ? garments : own.garments,
            both(own.scenes, scenes, Scene::id),
            both(own.marks, marks, Mark::id),
            both(own.signs, signs),
            both(own.changes, changes));
  }

  private static <T> List<T> both(List<T> own, List<T> shared, Function<T, String> id) {
    Set<String> there = own.stream().map(id).collect(Collectors.toSet());
    return Stream.concat(
            own.stream(), shared.stream().filter(one -> !there.contains(id.apply(one))))
        .toList();
  }

  private static Map<String, List<String>> both(
      Map<String, List<String>> own, Map<String, List<String>> shared) {
    Map<String, List<String>> all = new LinkedHashMap<>(shared);
    all.putAll(own);
    return all;
  }

  /**
   * A garment as it is made.
   *
   * @param id the pattern sheet's id, or a name of its own
   */
  public record GarmentShape(String id, GarmentView front, GarmentView back) {
    /** The view of this name, "front" or "back". */
    public GarmentView view(String name) {
      return name.equals("back") ? back : front;
    }
  }

  /**
   * One view of a garment.
   *
   * @param shell outlines of its pieces
   * @param band outline of the underband
   * @param lines seams, edges and closures
   * @param shade what rounds the cups
   */
  public record GarmentView(
      List<String> shell, String band, List<String> lines, List<String> shade) {}

  /** A piece of cloth, an elastic, a seam or a tape. */
  public record Scene(String id, List<String> shell, List<String> lines) {}

  /**
   * Something drawn on a garment or a scene.
   *
   * @param view "front", "back" or the id of a scene
   * @param as what it is: one of {@link #KINDS}
   * @param once whether it is the whole, not the left half
   */
  public record Mark(String id, String view, String as, boolean once, List<String> paths) {}

  /** The kinds of marks, in the order in which they are drawn. */
  public static final List<String> KINDS =
      List.of("area", "gap", "edge", "cut", "pull", "fold", "arrow");
}
