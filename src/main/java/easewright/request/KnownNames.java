package easewright.request;

import easewright.measure.Plausibility;
import easewright.pattern.PatternSheets;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Practice.AreaEntry;
import easewright.rulebook.RuleBookSource;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.stream.Stream;

/**
 * The names a request may use.
 *
 * @param family id of the family whose names these are
 * @param families which families of garments there are, and how a request says which
 * @param signs ids of signs
 * @param dangers ids of those signs that are dangers
 * @param places locations of signs on the body or the garment
 * @param adjustments ids of adjustments
 * @param causes ids of causes
 * @param areas areas in which all can be well
 * @param plausibility which measurements can be meant
 * @param sheets the pattern sheets that requests can name, and the reading of any other
 * @param book the sentences for faults, and the limits of lengths
 */
public record KnownNames(
    String family,
    FamilyNames families,
    Collection<String> signs,
    Collection<String> dangers,
    Collection<String> places,
    Collection<String> adjustments,
    Collection<String> causes,
    Collection<String> areas,
    Plausibility plausibility,
    PatternSheets sheets,
    RuleBookSource book) {

  public KnownNames {
    signs = inOrder(signs);
    dangers = inOrder(dangers);
    places = inOrder(places);
    adjustments = inOrder(adjustments);
    causes = inOrder(causes);
    areas = inOrder(areas);
  }

  /** The names of what one family has of a rule book; of all of it where it is the whole book. */
  public static KnownNames of(RuleBookSource book, PatternSheets sheets) {
    Catalog catalog = book.catalog();
    FamilyNames families = new FamilyNames(book, sheets);
    return new KnownNames(
        book.family() == null ? families.usual() : book.family(),
        families,
        catalog.signs().keySet(),
        catalog.signs().values().stream().filter(SignEntry::redFlag).map(SignEntry::id).toList(),
        catalog.signs().values().stream()
            .flatMap(sign -> sign.where() == null ? Stream.empty() : sign.where().stream())
            .distinct()
            .sorted()
            .toList(),
        catalog.adjustments().keySet(),
        catalog.causes().keySet(),
        catalog.practice().areas().stream().map(AreaEntry::id).toList(),
        book.plausibility(),
        sheets,
        book);
  }

  RequestWords words() {
    return new RequestWords(book);
  }

  /** Fast look-up, with suggestions always in the same order. */
  private static Collection<String> inOrder(Collection<String> names) {
    return Collections.unmodifiableSet(new LinkedHashSet<>(names));
  }
}
