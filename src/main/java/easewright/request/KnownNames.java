package easewright.request;

import easewright.measure.Plausibility;
import easewright.pattern.PatternSheets;
import easewright.rulebook.Catalog;
import easewright.rulebook.RuleBookSource;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.stream.Stream;

/**
 * The names a request may use.
 *
 * @param signs ids of signs
 * @param places locations of signs on the body or the garment
 * @param adjustments ids of adjustments
 * @param causes ids of causes
 * @param plausibility which measurements can be meant
 * @param sheets the shipped pattern sheets, and the reading of any other
 * @param book what to say of a request that can't be, and how far its lengths may go
 */
public record KnownNames(
    Collection<String> signs,
    Collection<String> places,
    Collection<String> adjustments,
    Collection<String> causes,
    Plausibility plausibility,
    PatternSheets sheets,
    RuleBookSource book) {

  public KnownNames {
    signs = inOrder(signs);
    places = inOrder(places);
    adjustments = inOrder(adjustments);
    causes = inOrder(causes);
  }

  /** The names of a rule book. */
  public static KnownNames of(RuleBookSource book, PatternSheets sheets) {
    Catalog catalog = book.catalog();
    return new KnownNames(
        catalog.signs().keySet(),
        catalog.signs().values().stream()
            .flatMap(sign -> sign.where() == null ? Stream.empty() : sign.where().stream())
            .distinct()
            .sorted()
            .toList(),
        catalog.adjustments().keySet(),
        catalog.causes().keySet(),
        new Plausibility(catalog.practice().measures()),
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
