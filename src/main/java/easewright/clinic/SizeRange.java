package easewright.clinic;

import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Neighbouring sizes of a pattern: cups or bands from one to another, or named sizes in their
 * order, or all of them.
 *
 * @param of what the labels denote
 * @param labels the cups, bands or sizes of the range, smallest first
 * @param all of the pattern, smallest first
 */
public record SizeRange(Axis of, List<String> labels, List<String> all) {
  public SizeRange {
    labels = List.copyOf(labels);
    all = List.copyOf(all);
  }

  /** What makes sizes neighbours. */
  public enum Axis {
    CUP(PatternSize::cup),
    BAND(PatternSize::band),
    SIZE(size -> size.cup().isPresent() ? Optional.empty() : Optional.of(size.name()));

    private final Function<PatternSize, Optional<String>> label;

    Axis(Function<PatternSize, Optional<String>> label) {
      this.label = label;
    }

    /** The label of a size; empty if the pattern's sizes have none of this kind. */
    public Optional<String> label(PatternSheet sheet, String size) {
      return sheet.size(size).flatMap(label);
    }
  }

  /** Whether these are all sizes of the pattern. */
  public boolean whole() {
    return labels.size() == all.size();
  }

  /** "smallest" or "largest" if the range lies at that end, otherwise an empty text. */
  public String end() {
    if (whole()) {
      return "";
    }
    return labels.get(0).equals(all.get(0))
        ? "smallest"
        : labels.get(labels.size() - 1).equals(all.get(all.size() - 1)) ? "largest" : "";
  }

  /** Every range of a pattern's sizes, the whole once. */
  static List<SizeRange> in(PatternSheet sheet) {
    List<SizeRange> ranges = new ArrayList<>();
    boolean wholeIsIn = false;
    for (Axis axis : Axis.values()) {
      LinkedHashSet<String> labels = new LinkedHashSet<>();
      sheet.sizes().forEach(size -> axis.label.apply(size).ifPresent(labels::add));
      List<String> all = List.copyOf(labels);
      for (int from = 0; from < all.size(); from++) {
        for (int to = from + 1; to <= all.size(); to++) {
          boolean whole = to - from == all.size();
          if (!whole || !wholeIsIn) {
            ranges.add(new SizeRange(axis, all.subList(from, to), all));
          }
          wholeIsIn |= whole;
        }
      }
    }
    return ranges;
  }
}
