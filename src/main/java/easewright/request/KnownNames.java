package easewright.request;

import easewright.measure.Plausibility;
import easewright.pattern.PatternSheets;
import easewright.rulebook.Catalog;
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
 * @param plausibility which measurements are plausible
 * @param sheets the shipped pattern sheets, and the parser for others
 */
public record KnownNames(
    Collection<String> signs,
    Collection<String> places,
    Collection<String> adjustments,
    Collection<String> causes,
    Plausibility plausibility,
    PatternSheets sheets) {

  public KnownNames {
    signs = inOrder(signs);
    places = inOrder(places);
    adjustments = inOrder(adjustments);
    causes = inOrder(causes);
  }

  /** The names of a rule book's catalog. */
  public static KnownNames of(Catalog catalog, PatternSheets sheets) {
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
        sheets);
  }

  /** Fast look-up, with suggestions always in the same order. */
  private static Collection<String> inOrder(Collection<String> names) {
    return Collections.unmodifiableSet(new LinkedHashSet<>(names));
  }
}
