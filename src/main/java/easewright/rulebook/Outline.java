package easewright.rulebook;

import java.util.List;

/**
 * The drawing of a family's garment with its places: {@code outline.svg} in its folder. Each view
 * is 480 wide and 420 high, the middle of the garment at 240.
 *
 * @param garment what is drawn, as in "of a plain top"
 * @param title of both views together
 * @param down the places by which the signs of a fitting are listed, from the top of the garment
 *     down
 * @param front the front view; null if nothing is drawn
 * @param back the back view; null if nothing is drawn
 */
public record Outline(String garment, String title, List<String> down, View front, View back) {

  /** The file in a family's folder. */
  public static final String FILE = "outline.svg";

  /** A family without a drawing. */
  public static final Outline NONE = new Outline(null, null, List.of(), null, null);

  /**
   * One view.
   *
   * @param title what it shows
   * @param desc the same in sentences, for whoever cannot see it
   * @param lines SVG groups, paths and circles of the garment itself
   * @param places in the order of their labels
   */
  public record View(String title, String desc, String lines, List<Place> places) {}

  /**
   * A place on a view, with its label.
   *
   * @param id the place word
   * @param part the one of {@link Outline#down} it is listed under; null for itself
   * @param mark SVG path data of the place; null for a word that is no place
   * @param area whether the place is the area inside the path instead of the line
   * @param side where its label stands: "left", "right" or "below"
   * @param y height of the label's line
   * @param toX end of that line, on the place
   * @param toY the same, downwards
   */
  public record Place(
      String id, String part, String mark, boolean area, String side, int y, int toX, int toY) {

    /** The place in the list of a fitting's signs. */
    public String listedAt() {
      return part == null ? id : part;
    }
  }

  /** Whether there is a drawing. */
  public boolean drawn() {
    return front != null;
  }

  /** Whether this place is drawn and can be marked. */
  public boolean marks(String place) {
    return drawn()
        && List.of(front, back).stream()
            .flatMap(view -> view.places().stream())
            .anyMatch(one -> one.mark() != null && one.id().equals(place));
  }

  /**
   * Reads the file.
   *
   * @throws OutlineFault if it is not such a drawing
   */
  public static Outline read(String svg) {
    return new OutlineReader(svg).outline();
  }
}
