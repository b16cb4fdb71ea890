package easewright.handbook;

import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Everything with a page, by its kind and by its place on the garment.
 *
 * @param causes by the part of the garment or of the work
 * @param signs in alphabetical order
 * @param places every place a sign can be at or an adjustment is made at
 * @param adjustments by their stage in the order of work
 */
public record HandbookIndex(
    List<Group> causes,
    List<Item> signs,
    List<Place> places,
    List<Group> adjustments,
    List<Item> findings,
    List<Item> cautions) {
  private static final Set<String> SMALL =
      Set.of(
          "a", "an", "and", "at", "by", "do", "does", "for", "how", "i", "in", "is", "it", "its",
          "keeps", "my", "of", "on", "or", "the", "they", "to", "what", "when", "why", "with");

  /**
   * One entry.
   *
   * @param says a sentence about it
   * @param find its searchable text in lower case: name, sentence, everyday phrases
   */
  public record Item(PageLink to, String says, String find) {
    private boolean holds(List<String> words) {
      return words.stream().allMatch(find::contains);
    }
  }

  /** Entries under a heading. */
  public record Group(String name, List<Item> items) {}

  /** A place with the signs seen there and the adjustments made there. */
  public record Place(String id, String name, List<Item> signs, List<Item> adjustments) {}

  static HandbookIndex of(RuleBookSource source, Links links) {
    Catalog catalog = source.catalog();
    Map<String, Item> signs = new LinkedHashMap<>();
    catalog.signs().values().stream()
        .sorted(Comparator.comparing(SignEntry::name))
        .forEach(
            sign ->
                signs.put(
                    sign.id(),
                    item(
                        links.of(sign.id()),
                        sign.ask(),
                        String.join(" ", sign.phrases()) + " " + String.join(" ", sign.where()))));
    Map<String, Item> changes = new LinkedHashMap<>();
    catalog
        .adjustments()
        .values()
        .forEach(
            change ->
                changes.put(change.id(), item(links.of(change.id()), change.why(), change.does())));
    return new HandbookIndex(
        groups(
            catalog.causes().values(),
            cause -> cause.area(),
            cause -> item(links.of(cause.id()), cause.says(), cause.area())),
        List.copyOf(signs.values()),
        places(catalog, signs, changes),
        groups(
            catalog.adjustments().values(),
            AdjustmentEntry::stage,
            change -> changes.get(change.id())),
        catalog.findings().values().stream()
            .map(one -> item(links.of(one.id()), one.says(), one.saysNot()))
            .toList(),
        catalog.cautions().values().stream()
            .map(one -> item(links.of(one.id()), one.says(), one.who()))
            .toList());
  }

  /** Only entries that contain every word of a search; omits empty groups. */
  public HandbookIndex matching(String question) {
    List<String> words = words(question);
    Function<List<Item>, List<Item>> kept =
        items -> items.stream().filter(item -> item.holds(words)).toList();
    Function<List<Group>, List<Group>> keptGroups =
        groups ->
            groups.stream()
                .map(group -> new Group(group.name(), kept.apply(group.items())))
                .filter(group -> !group.items().isEmpty())
                .toList();
    return new HandbookIndex(
        keptGroups.apply(causes),
        kept.apply(signs),
        places.stream()
            .map(
                place ->
                    new Place(
                        place.id(),
                        place.name(),
                        kept.apply(place.signs()),
                        kept.apply(place.adjustments())))
            .filter(place -> !place.signs().isEmpty() || !place.adjustments().isEmpty())
            .toList(),
        keptGroups.apply(adjustments),
        kept.apply(findings),
        kept.apply(cautions));
  }

  /** The signs with these ids, in this order. */
  public List<Item> signs(List<String> ids) {
    return ids.stream()
        .distinct()
        .flatMap(id -> signs.stream().filter(item -> item.to().href().endsWith("/" + id)))
        .toList();
  }

  /** Search words; ignores stop words unless there are no others. */
  private static List<String> words(String question) {
    List<String> all =
        Arrays.stream(question.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}-]+"))
            .filter(word -> !word.isBlank())
            .toList();
    List<String> significant = all.stream().filter(word -> !SMALL.contains(word)).toList();
    return significant.isEmpty() ? all : significant;
  }

  /** Whether the index is empty. */
  public boolean isEmpty() {
    return Stream.of(causes, signs, adjustments, findings, cautions).allMatch(List::isEmpty);
  }

  private static Item item(PageLink to, String says, String more) {
    return new Item(to, says, (to.name() + " " + says + " " + more).toLowerCase(Locale.ROOT));
  }

  private static <E> List<Group> groups(
      Iterable<E> entries, Function<E, String> under, Function<E, Item> item) {
    Map<String, List<Item>> groups = new LinkedHashMap<>();
    entries.forEach(
        entry ->
            groups
                .computeIfAbsent(under.apply(entry), name -> new ArrayList<>())
                .add(item.apply(entry)));
    return groups.entrySet().stream().map(one -> new Group(one.getKey(), one.getValue())).toList();
  }

  private static List<Place> places(
      Catalog catalog, Map<String, Item> signs, Map<String, Item> changes) {
    Map<String, Place> places = new TreeMap<>();
    Function<String, Place> at =
        id ->
            places.computeIfAbsent(
                id,
                name ->
                    new Place(
                        name, Links.place(name).name(), new ArrayList<>(), new ArrayList<>()));
    for (SignEntry sign : catalog.signs().values()) {
      sign.where().forEach(where -> at.apply(where).signs().add(signs.get(sign.id())));
    }
    for (AdjustmentEntry change : catalog.adjustments().values()) {
      Stream.of(change.at(), change.alsoAt())
          .filter(lines -> lines != null)
          .flatMap(List::stream)
          .distinct()
          .forEach(line -> at.apply(line).adjustments().add(changes.get(change.id())));
    }
    return List.copyOf(places.values());
  }
}
