package easewright.plan;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What each adjustment does to the cut, as {@code easewright/plan/changes.yaml} says. */
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
   * @param twice whether those change by two amounts
   */
  record Entry(Way way, List<String> measures, boolean twice) {}

  private record Line(String id, List<String> measures, boolean twice) {}

  private final Map<String, Entry> entries = new LinkedHashMap<>();

  ChangeBook() {
    try (InputStream yaml = ChangeBook.class.getResourceAsStream("/easewright/plan/changes.yaml")) {
      new YAMLMapper()
          .readValue(yaml, new TypeReference<Map<String, List<Line>>>() {})
          .forEach((way, lines) -> lines.forEach(line -> put(Way.valueOf(upper(way)), line)));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private void put(Way way, Line line) {
    List<String> measures = line.measures() == null ? List.of() : line.measures();
    if (entries.put(line.id(), new Entry(way, measures, line.twice())) != null) {
      throw new IllegalStateException(line.id() + " stands twice in changes.yaml.");
    }
  }

  private static String upper(String way) {
    return way.toUpperCase(java.util.Locale.ROOT);
  }

  Set<String> ids() {
    return entries.keySet();
  }

  Entry of(String adjustment) {
    return entries.getOrDefault(adjustment, new Entry(Way.NOTHING, List.of(), false));
  }
}
