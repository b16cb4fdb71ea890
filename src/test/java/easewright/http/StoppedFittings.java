package easewright.http;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.RandomFittings;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Catalog.SignEntry;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Random fittings: a third have a danger as a sign, a third a circumstance that requires room, and
 * a third either of them in words; all also have signs of a loose garment, and half ask about a
 * change that tightens.
 */
final class StoppedFittings {
  /** From the public guidance that the cautions' sources name; the catalog has no list of them. */
  private static final List<String> ROOM =
      List.of("nursing", "pregnant", "operatedRecently", "implantOrExpander");

  private static final List<String> IN_WORDS =
      List.of(
          "I am breastfeeding my baby.",
          "I am pregnant, 20 weeks.",
          "I had breast surgery two months ago.",
          "I have implants.");

  private final Random random = new Random(15);
  private final List<String> loose;
  private final List<String> looseInWords;
  private final List<String> dangers;
  private final List<String> dangersInWords;
  private final List<String> tightening;
  private final List<PatternSheet> sheets;

  /**
   * @param tightened the causes cured by some change that tightens
   * @param shown the signs of such causes
   */
  StoppedFittings(Catalog catalog, Set<String> shown, List<PatternSheet> sheets) {
    this.sheets = sheets;
    List<SignEntry> signs = List.copyOf(catalog.signs().values());
    this.loose =
        signs.stream().filter(s -> shown.contains(s.id())).map(SignEntry::id).sorted().toList();
    this.tightening =
        catalog.adjustments().values().stream()
            .filter(AdjustmentEntry::tightens)
            .map(AdjustmentEntry::id)
            .sorted()
            .toList();
    this.looseInWords = phrases(signs.stream().filter(s -> shown.contains(s.id())));
    this.dangers = signs.stream().filter(SignEntry::redFlag).map(SignEntry::id).sorted().toList();
    this.dangersInWords = phrases(signs.stream().filter(SignEntry::redFlag));
  }

  private static List<String> phrases(Stream<SignEntry> signs) {
    return signs
        .filter(sign -> sign.phrases() != null)
        .flatMap(sign -> sign.phrases().stream())
        .sorted()
        .toList();
  }

  /** A fixed sequence of this many. */
  List<ObjectNode> some(int count) {
    List<ObjectNode> some = RandomFittings.some(count);
    return IntStream.range(0, count)
        .mapToObj(i -> stopped(some.get(i), i))
        .collect(Collectors.toList());
  }

  private ObjectNode stopped(ObjectNode given, int i) {
    if (random.nextInt(3) > 0) {
      anotherSheet(given);
    }
    given.remove("whyNot");
    if (random.nextBoolean()) {
      given.putArray("whyNot").add("band-too-long").add("straps-too-long").add("cup-too-small");
    }
    if (i % 2 == 0) {
      given.putArray("asksAbout").add(tightening.get(i / 2 % tightening.size()));
    }
    switch (i % 3) {
      case 0 -> sign(given, one(dangers));
      case 1 -> given.withObject("/circumstances").put(one(ROOM), true);
      default -> {
        given.put(
            "text",
            random.nextBoolean()
                ? one(looseInWords) + ". " + one(IN_WORDS)
                : "My " + one(looseInWords) + ". " + one(dangersInWords) + ".");
        return given;
      }
    }
    sign(given, one(loose));
    return given;
  }

  private void anotherSheet(ObjectNode given) {
    PatternSheet sheet = one(sheets);
    List<PatternSize> sizes = sheet.sizes();
    given.remove(List.of("pattern", "choices", "sizeCut"));
    given.putObject("pattern").put("sheet", sheet.id());
    if (random.nextInt(8) > 0) {
      given.put("sizeCut", one(sizes).name());
    }
  }

  private static void sign(ObjectNode given, String id) {
    for (var one : given.withArray("signs")) {
      if (one.path("sign").asText().equals(id)) {
        ((ObjectNode) one).removeAll();
        ((ObjectNode) one).put("sign", id);
        return;
      }
    }
    given.withArray("signs").addObject().put("sign", id);
  }

  private <T> T one(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }
}
