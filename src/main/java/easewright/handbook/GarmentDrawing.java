package easewright.handbook;

import easewright.rulebook.Outline;
import easewright.rulebook.Outline.Place;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The drawing of a family's garment with labels on its places. In drawing units: each view is 480
 * wide and 420 high, with the garment's centre at 240.
 *
 * @param outline what the rule book draws
 */
public record GarmentDrawing(Outline outline, View front, View back) {
  private static final int LEFT = 122;
  private static final int RIGHT = 358;

  /**
   * One view with its labels.
   *
   * @param id "front" or "back"
   */
  public record View(String id, Outline.View shown, List<Label> labels) {}

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

  /** The drawing of an outline that is drawn. */
  public static GarmentDrawing of(Outline outline) {
    return new GarmentDrawing(
        outline, view("front", outline.front()), view("back", outline.back()));
  }

  /** The same with labels that lead to the parts by which signs are listed. */
  public GarmentDrawing byParts() {
    return new GarmentDrawing(outline, byParts(front), byParts(back));
  }

  private static View view(String id, Outline.View view) {
    return new View(id, view, view.places().stream().map(GarmentDrawing::label).toList());
  }

  private View byParts(View view) {
    return new View(
        view.id(),
        view.shown(),
        view.shown().places().stream()
            .map(place -> label(place, place.mark() == null ? null : place.listedAt()))
            .toList());
  }

  private static Label label(Place place) {
    return label(place, place.mark() == null ? null : place.id());
  }

  private static Label label(Place place, String to) {
    String name = Links.place(place.id()).name();
    int y = place.y();
    return switch (place.side()) {
      case "left" -> new Label(to, name, "end", LEFT, y + 5, LEFT + 5, y, place.toX(), place.toY());
      case "right" ->
          new Label(to, name, "start", RIGHT, y + 5, RIGHT - 5, y, place.toX(), place.toY());
      default ->
          new Label(
              to, name, "middle", place.toX(), y, place.toX(), y - 14, place.toX(), place.toY());
    };
  }

  /**
   * One place marked on the view that shows it.
   *
   * @param garment what is drawn, as in "of a plain top"
   * @param view only the label of that place
   * @param line SVG path data of the place, on both sides of the garment
   * @param area whether the place is the area inside the path instead of the line
   */
  public record Marked(String garment, View view, String line, boolean area) {

    /** The word for the place. */
    public String name() {
      return view.labels().get(0).name();
    }

    /** Whether that is the back view. */
    public boolean back() {
      return view.id().equals("back");
    }
  }

  /** The drawing with a place marked; empty for a place that is not drawn. */
  public Optional<Marked> marking(String place) {
    return Stream.of(front, back).flatMap(view -> marking(place, view).stream()).findFirst();
  }

  private Optional<Marked> marking(String place, View view) {
    return view.shown().places().stream()
        .filter(one -> one.id().equals(place) && one.mark() != null)
        .findFirst()
        .map(
            one ->
                new Marked(
                    outline.garment(),
                    new View(view.id(), view.shown(), List.of(label(one))),
                    one.mark(),
                    one.area()));
  }
}
