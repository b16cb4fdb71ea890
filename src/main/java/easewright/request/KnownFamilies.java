package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.pattern.PatternSheets;
import easewright.rulebook.RuleBookSource;
import java.util.Collection;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The names that requests may use, by the family of garments they are about. */
public final class KnownFamilies {
  private final FamilyNames families;
  private final Map<String, KnownNames> known;
  private final KnownNames usual;

  private KnownFamilies(KnownNames usual, Collection<KnownNames> all) {
    this.families = usual.families();
    this.usual = usual;
    this.known = all.stream().collect(Collectors.toMap(KnownNames::family, Function.identity()));
  }

  /** The names of every family of a whole book. */
  public static KnownFamilies of(RuleBookSource book, PatternSheets sheets) {
    FamilyNames families = new FamilyNames(book, sheets);
    Map<String, KnownNames> all =
        book.families().values().stream()
            .map(family -> KnownNames.of(book.in(family), sheets))
            .collect(Collectors.toMap(KnownNames::family, Function.identity()));
    return new KnownFamilies(all.get(families.usual()), all.values());
  }

  /** These names, whatever the family. */
  static KnownFamilies only(KnownNames known) {
    return new KnownFamilies(known, java.util.List.of(known));
  }

  /** The names that a request may use. */
  KnownNames of(JsonNode request) {
    return known.getOrDefault(families.of(request), usual);
  }
}
