package easewright.rulebook;

import easewright.measure.Measures;
import java.util.List;

/**
 * How the trade works, whatever the garment: what {@code practice/} of a rule book says.
 *
 * @param order the order of work, and which caution comes first
 * @param measures what tape measurements can be
 * @param traits what rules may say of a pattern
 * @param circumstances what rules may say of the wearing
 * @param sewing needles and stitches
 * @param sizing which of two sizes to take
 */
public record Practice(
    OrderOfWork order,
    Measures measures,
    List<TraitEntry> traits,
    List<CircumstanceEntry> circumstances,
    SewingNotes sewing,
    SizingNotes sizing) {

  /** The files of {@code practice/}, without their ending, each with a schema of its name. */
  public static final List<String> FILES =
      List.of("order", "measures", "traits", "circumstances", "sewing", "sizing");

  /**
   * A property of a pattern.
   *
   * @param with what its sheet must have, all of it; null for nothing
   * @param without what its sheet must not have, none of it; null for nothing
   */
  public record TraitEntry(String id, String name, List<OnSheet> with, List<OnSheet> without)
      implements Catalog.Entry {}

  /**
   * Something a pattern sheet may have; one component is set.
   *
   * @param line an edge or line that a piece bears
   * @param trim a kind of trim
   * @param layer "main", "lining" or "support": a piece of it
   * @param support "low", "medium" or "high"
   * @param fold a piece cut on the fold
   */
  public record OnSheet(String line, String trim, String layer, String support, boolean fold) {}

  /**
   * Something said of the wearing.
   *
   * @param why why it bears on comfort or safety
   */
  public record CircumstanceEntry(String id, String name, String why) implements Catalog.Entry {}

  /** The name of a circumstance in words; the id itself when unknown. */
  public String circumstance(String id) {
    return nameOf(id, circumstances);
  }

  /** The name of a trait in words; the id itself when unknown. */
  public String trait(String id) {
    return nameOf(id, traits);
  }

  private static String nameOf(String id, List<? extends Catalog.Entry> entries) {
    for (Catalog.Entry entry : entries) {
      if (entry.id().equals(id)) {
        return entry.name();
      }
    }
    return id;
  }
}
