package easewright.desk;

import easewright.handbook.GarmentDrawing;
import easewright.handbook.GarmentDrawing.Label;
import easewright.saying.SignNote;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The places on the drawing, each with the signs seen there.
 *
 * @param drawing our drawing, whose labels all link to one of the places
 * @param places in the order of the drawing, from top to bottom
 */
public record SignPlaces(GarmentDrawing drawing, List<Place> places) {
  /** From the top of the garment down; signs without a specific place come last. */
  private static final List<String> DOWNWARDS =
      List.of(
          "strap",
          "shoulder",
          "neckline",
          "armhole",
          "underarm",
          "front",
          "centre-front",
          "side",
          "back",
          "underband",
          "all-over");

  /** Finer labels of the drawing, and the place their signs belong to. */
  private static final Map<String, String> SEEN_AT =
      Map.ofEntries(
          Map.entry("strap-end", "strap"),
          Map.entry("back-strap-point", "strap"),
          Map.entry("shoulder-seam", "shoulder"),
          Map.entry("back-neckline", "neckline"),
          Map.entry("front-armhole", "armhole"),
          Map.entry("back-armhole", "armhole"),
          Map.entry("bust-line", "front"),
          Map.entry("shaped-seam", "front"),
          Map.entry("front-length-line", "front"),
          Map.entry("side-seam", "side"),
          Map.entry("centre-back", "back"),
          Map.entry("back-length-line", "back"),
          Map.entry("underband-seam", "underband"),
          Map.entry("underband-centre-back", "underband"),
          Map.entry("casing", "underband"));

  /** A place and the signs seen there. */
  public record Place(String id, String name, List<SignNote> signs) {}

  /** The place where a sign's details are entered: a sign of several places has one home. */
  public String home(SignNote sign) {
    return seenAt(sign.where().get(0));
  }

  /** Arranges the signs of a rule book; a sign of several places appears at each. */
  static SignPlaces of(List<SignNote> signs) {
    Map<String, List<SignNote>> at = new LinkedHashMap<>();
    DOWNWARDS.forEach(place -> at.put(place, new ArrayList<>()));
    for (SignNote sign : signs) {
      for (String place : sign.where()) {
        List<SignNote> there = at.computeIfAbsent(seenAt(place), any -> new ArrayList<>());
        if (!there.contains(sign)) {
          there.add(sign);
        }
      }
    }
    return new SignPlaces(
        leadingHere(),
        at.entrySet().stream()
            .filter(place -> !place.getValue().isEmpty())
            .map(
                place ->
                    new Place(
                        place.getKey(),
                        place.getKey().replace('-', ' '),
                        List.copyOf(place.getValue())))
            .toList());
  }

  private static String seenAt(String place) {
    return SEEN_AT.getOrDefault(place, place);
  }

  private static GarmentDrawing leadingHere() {
    GarmentDrawing plain = GarmentDrawing.plainTop();
    return new GarmentDrawing(
        plain.front().stream().map(SignPlaces::leading).toList(),
        plain.back().stream().map(SignPlaces::leading).toList());
  }

  private static Label leading(Label label) {
    return label.place() == null
        ? label
        : new Label(
            seenAt(label.place()),
            label.name(),
            label.anchor(),
            label.x(),
            label.y(),
            label.fromX(),
            label.fromY(),
            label.toX(),
            label.toY());
  }
}
