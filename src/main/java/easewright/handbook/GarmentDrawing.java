package easewright.handbook;

import java.util.List;
import java.util.Optional;

/**
 * The labels on our drawing of a plain wire-free sports top; its outlines are in the template. Kept
 * as data so that a test can compare it with the catalog's place names. In drawing units: each view
 * is 480 wide and 440 high, with the garment's centre at 240.
 *
 * @param front labels of the front view
 * @param back labels of the back view
 */
public record GarmentDrawing(List<Label> front, List<Label> back) {
  /** Places that are not a specific part of the garment. */
  public static final List<String> NOT_DRAWN = List.of("all-over");

  private static final int LEFT = 122;
  private static final int RIGHT = 358;

  /**
   * A label with a line to the part it names.
   *
   * @param place place name from the catalog, or null for a label without a section
   * @param name the word shown
   * @param anchor SVG text-anchor
   * @param x position of the word
   * @param y its baseline
   * @param fromX start of its line
   * @param fromY the same, downwards
   * @param toX end of its line, on the part named
   * @param toY the same, downwards
   */
  public record Label(
      String place,
      String name,
      String anchor,
      int x,
      int y,
      int fromX,
      int fromY,
      int toX,
      int toY) {}

  /** The drawing. */
  public static GarmentDrawing plainTop() {
    return new GarmentDrawing(
        List.of(
            left("strap", 30, 186, 44),
            left("shoulder-seam", 64, 180, 68),
            left("front-armhole", 108, 170, 123),
            left("underarm", 152, 142, 168),
            left("bust-line", 190, 146, 205),
            left("side-seam", 232, 146, 238),
            left("front-length-line", 268, 152, 262),
            left("underband-seam", 304, 152, 302),
            left("casing", 342, 160, 330),
            right("shoulder", 22, 300, 24),
            right("armhole", 84, 306, 100),
            right("neckline", 126, 257, 140),
            word("apex", 166, 288, 205),
            right("shaped-seam", 204, 286, 250),
            right("side", 242, 322, 232),
            right("centre-front", 292, 240, 286),
            right("underband", 334, 318, 324)),
        List.of(
            left("strap-end", 74, 190, 94),
            left("back-armhole", 128, 167, 143),
            left("back-length-line", 250, 150, 240),
            right("back-strap-point", 68, 286, 94),
            right("back-neckline", 122, 259, 137),
            right("centre-back", 220, 240, 214),
            below("underband-centre-back", 384, 240, 332)));
  }

  /**
   * One place marked on the view that shows it.
   *
   * @param back whether that is the back view
   * @param drawing only the label of that place
   * @param line SVG path data of the place, on both sides of the garment
   * @param area whether the place is the area inside the path instead of the line
   */
  public record Marked(boolean back, GarmentDrawing drawing, String line, boolean area) {

    /** The word for the place. */
    public String name() {
      return (back ? drawing.back : drawing.front).get(0).name();
    }
  }

  /** The drawing with a place marked; empty for a place that is not drawn. */
  public Optional<Marked> marking(String place) {
    return GarmentMark.of(place).flatMap(mark -> marking(place, mark));
  }

  private Optional<Marked> marking(String place, GarmentMark mark) {
    GarmentDrawing alone = new GarmentDrawing(only(place, front), only(place, back));
    return alone.front.isEmpty() && alone.back.isEmpty()
        ? Optional.empty()
        : Optional.of(new Marked(alone.front.isEmpty(), alone, mark.line(), mark.area()));
  }

  private static List<Label> only(String place, List<Label> labels) {
    return labels.stream().filter(label -> place.equals(label.place())).toList();
  }

  private static Label left(String place, int y, int toX, int toY) {
    return new Label(place, name(place), "end", LEFT, y + 5, LEFT + 5, y, toX, toY);
  }

  private static Label right(String place, int y, int toX, int toY) {
    return new Label(place, name(place), "start", RIGHT, y + 5, RIGHT - 5, y, toX, toY);
  }

  private static Label word(String name, int y, int toX, int toY) {
    return new Label(null, name, "start", RIGHT, y + 5, RIGHT - 5, y, toX, toY);
  }

  private static Label below(String place, int y, int toX, int toY) {
    return new Label(place, name(place), "middle", toX, y, toX, y - 14, toX, toY);
  }

  private static String name(String place) {
    return Links.place(place).name();
  }
}
