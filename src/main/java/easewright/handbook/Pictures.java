package easewright.handbook;

import easewright.rulebook.Catalog.Entry;
import easewright.rulebook.Drawings;
import easewright.rulebook.Family;
import easewright.rulebook.Outline;
import easewright.rulebook.RuleBookSource;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** The drawings of a book, each on the garment of its family. */
final class Pictures {
  private final RuleBookSource source;

  Pictures(RuleBookSource source) {
    this.source = source;
  }

  /** The garment of a family, null for the usual one; empty if there is none. */
  Optional<GarmentDrawing> garment(String family) {
    return (family == null
            ? Optional.of(Family.usual(source.families()))
            : Family.named(family, source.families()))
        .map(Family::outline)
        .filter(Outline::drawn)
        .map(GarmentDrawing::of);
  }

  Optional<Illustration> sign(String id, String family, String sheet) {
    return drawn(source.catalog().signs().get(id), family, sheet, false, Drawings::signs);
  }

  Optional<Illustration> change(String id, String family, String sheet) {
    return drawn(source.catalog().adjustments().get(id), family, sheet, true, Drawings::changes);
  }

  /** Whether some family has a drawing of a sign or change. */
  boolean shows(String id) {
    return whose(id, null).isPresent();
  }

  private Optional<Illustration> drawn(
      Entry entry,
      String family,
      String sheet,
      boolean change,
      Function<Drawings, Map<String, List<String>>> part) {
    return Optional.ofNullable(entry)
        .flatMap(one -> whose(one.id(), family))
        .map(source::drawings)
        .map(
            drawings ->
                Illustration.of(
                    drawings, entry.name(), change, part.apply(drawings).get(entry.id()), sheet));
  }

  /**
   * The family on whose garment something is drawn: the one asked for, else the usual one, else any
   * that has it.
   */
  private Optional<Family> whose(String id, String family) {
    String folder = source.catalog().folders().get(id);
    Map<String, Family> all = source.families();
    Stream<Family> asked =
        family == null
            ? Stream.concat(Stream.of(Family.usual(all)), all.values().stream())
            : Family.named(family, all).stream();
    return asked
        .filter(one -> one.hears(folder) && !source.drawings(one).garments().isEmpty())
        .filter(one -> one.usual() || one.drawings() != null)
        .findFirst();
  }
}
