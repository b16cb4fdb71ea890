package easewright.pattern;

import easewright.size.Region;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Reads the other names of sizes, by region. */
final class AliasReader {
  /** Key of names that hold everywhere. */
  private static final String ANY = "any";

  private AliasReader() {}

  /** The names listed under "aliases" of a node. */
  static List<SizeAlias> of(SheetNode node) {
    List<SizeAlias> aliases = new ArrayList<>();
    labels(node)
        .forEach(
            (region, labels) ->
                labels.forEach(label -> aliases.add(new SizeAlias(region(region), label))));
    return aliases;
  }

  /**
   * The names of a size of a grid: those of its band with those of its cup. If a region has another
   * name for only one of them, the sheet's own name is used for the other.
   */
  static List<SizeAlias> of(SheetNode band, SheetNode cup) {
    Map<String, List<String>> bands = labels(band);
    Map<String, List<String>> cups = labels(cup);
    Set<String> regions = new LinkedHashSet<>(bands.keySet());
    regions.addAll(cups.keySet());
    List<SizeAlias> aliases = new ArrayList<>();
    for (String name : regions) {
      Region region = region(name);
      for (String number : bands.getOrDefault(name, List.of(band.text("label")))) {
        for (String letter : cups.getOrDefault(name, List.of(cup.text("label")))) {
          aliases.add(
              new SizeAlias(region, region == Region.JP ? letter + number : number + letter));
        }
      }
    }
    return aliases;
  }

  private static Region region(String key) {
    return key.equals(ANY) ? null : Region.named(key).orElseThrow();
  }

  private static Map<String, List<String>> labels(SheetNode node) {
    Map<String, List<String>> labels = new LinkedHashMap<>();
    node.fields("aliases")
        .forEach(
            (region, at) ->
                labels.put(
                    region,
                    at.json().isArray()
                        ? node.at("aliases").texts(region)
                        : List.of(at.json().asText())));
    return labels;
  }
}
