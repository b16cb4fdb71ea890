package easewright.plan;

import java.util.List;

/**
 * An accepted adjustment from a fitting.
 *
 * @param adjustment its id
 * @param amountMm the whole change in mm, above zero; null for a change without an amount
 * @param places where it is made; empty for the places of the rule book
 */
public record AcceptedChange(String adjustment, Double amountMm, List<Place> places) {

  public AcceptedChange {
    places = List.copyOf(places);
  }

  /**
   * One place of a change.
   *
   * @param piece id of the piece
   * @param line id of the line or edge on it
   * @param eachMm the part of the change at each such edge, in mm; null for an equal share
   */
  public record Place(String piece, String line, Double eachMm) {}
}
