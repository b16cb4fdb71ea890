package easewright.http;

import easewright.pattern.PatternSheet;
import easewright.size.Range;
import easewright.size.SizeCell;
import easewright.size.SizeChart;
import easewright.size.SizeSystem;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The sizes of a chart that are smaller than one of them in the band or in the cup. */
final class SmallerSizes {
  private static final Pattern TOKEN = Pattern.compile("[\\p{L}\\p{N}/-]+");

  private final Map<String, Set<String>> byChartAndSize = new HashMap<>();

  /**
   * A size named in a text that is smaller in band or cup than the one cut; any size if that is
   * unknown.
   *
   * @param sheet null for none, which searches for the standard's sizes
   * @param cut the size cut, or null
   */
  Optional<String> in(String text, PatternSheet sheet, String cut) {
    Set<String> smaller =
        byChartAndSize.computeIfAbsent(
            (sheet == null ? "" : sheet.id()) + "\n" + cut, key -> smaller(sheet, cut));
    List<String> tokens = TOKEN.matcher(text).results().map(one -> one.group()).toList();
    for (int i = 0; i < tokens.size(); i++) {
      String two = i + 1 < tokens.size() ? tokens.get(i) + " " + tokens.get(i + 1) : "";
      if (smaller.contains(tokens.get(i)) || smaller.contains(two)) {
        return Optional.of(
            "size in: … "
                + String.join(
                    " ", tokens.subList(Math.max(0, i - 8), Math.min(tokens.size(), i + 8)))
                + " …");
      }
    }
    return Optional.empty();
  }

  private static Set<String> smaller(PatternSheet sheet, String cut) {
    SizeChart chart = sheet == null ? SizeSystem.EN.chart() : sheet.chart();
    List<String> cups = chart.cells().stream().map(SizeCell::cup).distinct().toList();
    Optional<SizeCell> known = chart.cell(String.valueOf(cut));
    return chart.cells().stream()
        .filter(cell -> !cell.id().replace(" ", "").equals(String.valueOf(cut).replace(" ", "")))
        .filter(cell -> known.isEmpty() || isSmaller(cell, known.get(), cups))
        .flatMap(cell -> Stream.of(cell.id(), cell.id().replace(" ", "")))
        .collect(Collectors.toSet());
  }

  private static boolean isSmaller(SizeCell one, SizeCell cut, List<String> cups) {
    return start(one.underbust()) < start(cut.underbust())
        || (one.cup() == null
            ? start(one.bust()) < start(cut.bust())
            : cups.indexOf(one.cup()) < cups.indexOf(cut.cup()));
  }

  private static double start(Range range) {
    return range == null ? 0 : range.loMm();
  }
}
