package easewright.rulebook;

import java.util.List;
import java.util.Map;

/**
 * How the trade works, whatever the garment: what {@code practice/} of a rule book says.
 *
 * @param order the order of work, and which caution comes first
 * @param traits what rules may say of a pattern
 * @param circumstances what rules may say of the wearing
 * @param areas of what a wearer may say that all is well with it
 * @param sewing needles and stitches
 * @param sizing which of two sizes to take
 * @param drawings of signs and changes
 */
public record Practice(
    OrderOfWork order,
    List<TraitEntry> traits,
    List<CircumstanceEntry> circumstances,
    List<AreaEntry> areas,
    SewingNotes sewing,
    SizingNotes sizing,
    Drawings drawings) {

  /** The folder of these files. */
  public static final String FOLDER = "practice/";

  /** The files of {@code practice/}, without their ending, each with a schema of its name. */
  public static final List<String> FILES =
      List.of("order", "traits", "circumstances", "areas", "sewing", "sizing", "drawings");

  /**
   * A property of a pattern.
   *
   * @param with what its sheet must have, all of it; null for nothing
   * @param without what its sheet must not have, none of it; null for nothing
   * @param design what a design described without a sheet says where the property holds: one of
   *     some words in a field; null if no design tells
   */
  public record TraitEntry(
      String id,
      String name,
      List<OnSheet> with,
      List<OnSheet> without,
      Map<String, List<String>> design)
      implements Catalog.Entry {}

  /**
   * Something a pattern sheet may have; one component is set.
   *
   * @param line an edge or line that a piece bears
   * @param trim a kind of trim
   * @param layer "main", "lining" or "support": a piece of it
   * @param support "low", "medium" or "high"
   * @param fold a piece cut on the fold
   * @param choice an option chosen, "choice/option"
   */
  public record OnSheet(
      String line, String trim, String layer, String support, boolean fold, String choice) {}

  /**
   * Something said of the wearing.
   *
   * @param why why it bears on comfort or safety
   */
  public record CircumstanceEntry(String id, String name, String why) implements Catalog.Entry {}

  /**
   * An area of which a wearer may say that all is well.
   *
   * @param name as in "the band"
   * @param areas areas of causes that would show there; null for none
   * @param causes ids of further causes that would show there; null for none
   */
  public record AreaEntry(String id, String name, List<String> areas, List<String> causes)
      implements Catalog.Entry {

    /** Whether this cause would show there. */
    public boolean shows(Catalog.CauseEntry cause) {
      return areas != null && areas.contains(cause.area())
          || causes != null && causes.contains(cause.id());
    }
  }

  /** The name of an area in words; the id itself when unknown. */
  public String area(String id) {
    return nameOf(id, areas);
  }

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
