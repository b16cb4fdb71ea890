package easewright.api;

import easewright.pattern.PatternSheet;
import java.util.Collection;
import java.util.Map;
import java.util.Set;

/**
 * The names a request may use, in the order to suggest them.
 *
 * @param signs ids of signs
 * @param places where on the body or the garment a sign may sit
 * @param adjustments ids of adjustments
 * @param causes ids of causes
 * @param sheets the shipped pattern sheets by id
 */
public record KnownNames(
    Collection<String> signs,
    Collection<String> places,
    Collection<String> adjustments,
    Collection<String> causes,
    Map<String, PatternSheet> sheets) {

  public KnownNames {
    signs = Set.copyOf(signs);
    places = Set.copyOf(places);
    adjustments = Set.copyOf(adjustments);
    causes = Set.copyOf(causes);
    sheets = Map.copyOf(sheets);
  }
}
