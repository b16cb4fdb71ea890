package easewright.desk;

import easewright.handbook.GarmentDrawing;
import easewright.rulebook.Outline;
import easewright.saying.SignNote;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The places on the drawing, each with the signs seen there.
 *
 * @param drawing our drawing, whose labels all link to one of the places; null if there is none
 * @param places from the top of the garment down; signs without a specific place come last
 * @param listedAt the place by which signs of a finer one are listed
 */
public record SignPlaces(GarmentDrawing drawing, List<Place> places, Map<String, String> listedAt) {

  /** A place and the signs seen there. */
  public record Place(String id, String name, List<SignNote> signs) {}

  /** The place where a sign's details are entered: a sign of several places has one home. */
  public String home(SignNote sign) {
    return listed(sign.where().get(0), listedAt, drawing);
  }

  /** A place that this garment does not have is listed last, with what can be anywhere. */
  private static String listed(String place, Map<String, String> listedAt, GarmentDrawing garment) {
    String there = listedAt.getOrDefault(place, place);
    if (garment == null || garment.outline().down().contains(there)) {
      return there;
    }
    List<String> down = garment.outline().down();
    return down.get(down.size() - 1);
  }

  /**
   * Arranges the signs of a rule book; a sign of several places appears at each.
   *
   * @param garment the drawing they are seen on; null if there is none
   */
  static SignPlaces of(GarmentDrawing garment, List<SignNote> signs) {
    Map<String, String> listedAt = new HashMap<>();
    Map<String, List<SignNote>> at = new LinkedHashMap<>();
    if (garment != null) {
      Outline outline = garment.outline();
      outline.down().forEach(place -> at.put(place, new ArrayList<>()));
      Stream.of(outline.front(), outline.back())
          .flatMap(view -> view.places().stream())
          .forEach(place -> listedAt.put(place.id(), place.listedAt()));
    }
    for (SignNote sign : signs) {
      for (String place : sign.where()) {
        List<SignNote> there =
            at.computeIfAbsent(listed(place, listedAt, garment), any -> new ArrayList<>());
        if (!there.contains(sign)) {
          there.add(sign);
        }
      }
    }
    List<Place> places =
        at.entrySet().stream()
            .filter(place -> !place.getValue().isEmpty())
            .map(
                place ->
                    new Place(
                        place.getKey(),
                        place.getKey().replace('-', ' '),
                        List.copyOf(place.getValue())))
            .toList();
    return new SignPlaces(garment == null ? null : garment.byParts(), places, listedAt);
  }
}
