package easewright.diagnosis;

import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import easewright.pattern.Span;
import easewright.size.Range;
import easewright.size.SizeCell;
import easewright.size.SizeChart;

/** The sizes of a pattern sheet as a chart to find a body on. */
public final class SheetChart {
  private SheetChart() {}

  /** The chart of a sheet; each size's id is its name on the sheet. */
  public static SizeChart of(PatternSheet sheet) {
    return SizeChart.of(sheet.sizes().stream().map(SheetChart::cell).toList());
  }

  private static SizeCell cell(PatternSize size) {
    return new SizeCell(
        size.name(),
        size.band().orElse(size.name()),
        size.cup().orElse(null),
        range(size.underbustMm()),
        size.bustMm().map(SheetChart::range).orElse(null),
        size.differenceMm().map(SheetChart::range).orElse(null));
  }

  private static Range range(Span span) {
    return Range.ofMm(span.fromMm(), span.toMm());
  }
}
