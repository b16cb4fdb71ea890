package easewright.handbook;

import easewright.rulebook.Drawings;
import easewright.rulebook.Drawings.GarmentShape;
import easewright.rulebook.Drawings.GarmentView;
import easewright.rulebook.Drawings.Mark;
import easewright.rulebook.Drawings.Scene;
import java.util.Comparator;
import java.util.List;

/**
 * The drawing of a sign or a change.
 *
 * @param name of the sign or change
 * @param change whether it shows a change
 * @param view "front", "back", or the id of a scene without a garment on a body
 * @param body outline of the body; null in a scene
 * @param shell outlines of pieces
 * @param band outline of the underband; null in a scene
 * @param lines seams, edges and closures
 * @param shade what rounds the cups
 * @param marks what is seen or changed; empty if the book draws nothing for it
 */
public record Illustration(
    String name,
    boolean change,
    String view,
    String body,
    List<String> shell,
    String band,
    List<String> lines,
    List<String> shade,
    List<Mark> marks) {

  /**
   * Draws marks on the garment of a pattern.
   *
   * @param ids the marks; null for none
   * @param sheet the pattern sheet's id; the plain garment is drawn if it has no shape of its own
   */
  static Illustration of(
      Drawings drawings, String name, boolean change, List<String> ids, String sheet) {
    List<Mark> marks =
        drawings.marks().stream()
            .filter(mark -> ids != null && ids.contains(mark.id()))
            .sorted(Comparator.comparingInt(mark -> Drawings.KINDS.indexOf(mark.as())))
            .toList();
    String view = marks.isEmpty() ? "front" : marks.get(0).view();
    for (Scene scene : drawings.scenes()) {
      if (scene.id().equals(view)) {
        return new Illustration(
            name, change, view, null, scene.shell(), null, scene.lines(), List.of(), marks);
      }
    }
    GarmentView garment = shape(drawings, sheet).view(view);
    return new Illustration(
        name,
        change,
        view,
        drawings.body().get(view),
        garment.shell(),
        garment.band(),
        garment.lines(),
        garment.shade(),
        marks);
  }

  private static GarmentShape shape(Drawings drawings, String sheet) {
    return drawings.garments().stream()
        .filter(garment -> garment.id().equals(sheet))
        .findFirst()
        .orElse(drawings.garments().get(0));
  }

  /** Whether a mark of this kind is drawn. */
  public boolean shows(String kind) {
    return marks.stream().anyMatch(mark -> mark.as().equals(kind));
  }
}
