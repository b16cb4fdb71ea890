package easewright.plan;

import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.CutChange;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Effects of adjustments on the cut, from the catalog. */
final class ChangeBook {
  /** How an adjustment changes what is cut. */
  enum Way {
    ADD,
    TAKE,
    RESHAPE,
    SHORTER,
    LONGER,
    SWAP,
    CLOTH,
    NOTHING;

    boolean isElastic() {
      return this == SHORTER || this == LONGER;
    }

    /** Whether pieces themselves change. */
    boolean isOfPieces() {
      return this == ADD || this == TAKE || this == RESHAPE;
    }
  }

  /**
   * One adjustment.
   *
   * @param measures finished measurements that change with it
   * @param twice whether these change by two amounts
   */
  record Entry(Way way, List<String> measures, boolean twice) {}

  private final Map<String, Entry> entries = new LinkedHashMap<>();

  ChangeBook(Catalog catalog) {
    catalog.adjustments().values().forEach(one -> entries.put(one.id(), entry(one.cut())));
  }

  private static Entry entry(CutChange cut) {
    return new Entry(
        Way.valueOf(cut.way().toUpperCase(Locale.ROOT)),
        cut.measures() == null ? List.of() : cut.measures(),
        cut.twice());
  }

  Set<String> ids() {
    return entries.keySet();
  }

  Entry of(String adjustment) {
    return entries.getOrDefault(adjustment, new Entry(Way.NOTHING, List.of(), false));
  }
}
