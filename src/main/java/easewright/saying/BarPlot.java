package easewright.saying;

import easewright.saying.InsightNotes.FaultNote;
import easewright.saying.InsightNotes.InsightNote;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Horizontal bar chart of counts, each bar below its name, {@value #WIDTH} units wide, so that it
 * stays legible on a narrow screen.
 *
 * @param id unique among the plots of a page
 * @param bars from the top
 */
public record BarPlot(String id, List<Bar> bars) {
  static final int WIDTH = 360;

  /** Maximum number of causes drawn; the table lists all. */
  static final int MOST_BARS = 12;

  private static final int STEP = 46;
  private static final int LONGEST = 268;

  public BarPlot {
    bars = List.copyOf(bars);
  }

  /**
   * A bar filled to its part of the whole.
   *
   * @param y its upper edge
   * @param length length for the whole
   * @param filled length for the part
   * @param marked whether to highlight the bar
   */
  public record Bar(
      String name, int part, int whole, int y, int length, int filled, boolean marked) {}

  /** Height of the drawing. */
  public int height() {
    return bars.size() * STEP + 6;
  }

  /** A clinic's causes as a stand-alone drawing. */
  public static String drawing(InsightNote insight) {
    return InsightPages.drawing(insight, ofCauses(insight)).render();
  }

  /** How many of the cases counted have each cause. */
  public static BarPlot ofCauses(InsightNote insight) {
    return new BarPlot(
        "causes",
        IntStream.range(0, Math.min(MOST_BARS, insight.causes().size()))
            .mapToObj(
                i -> {
                  InsightNotes.CountNote count = insight.causes().get(i);
                  return bar(i, count.name(), count.cases(), insight.cases(), false);
                })
            .toList());
  }

  /** How many of the cases cut in each cup, band or size have a fault. */
  public static BarPlot of(FaultNote fault) {
    int most = fault.bySize().stream().mapToInt(one -> one.cases().whole()).max().orElse(1);
    return new BarPlot(
        fault.pattern() + "-" + fault.cause(),
        IntStream.range(0, fault.bySize().size())
            .mapToObj(
                i -> {
                  InsightNotes.AtSizeNote at = fault.bySize().get(i);
                  return bar(i, fault.by() + " " + at.label(), at.cases(), most, at.inside());
                })
            .toList());
  }

  private static Bar bar(
      int place, String name, InsightNotes.ShareNote cases, int most, boolean marked) {
    int unit = Math.max(1, most);
    return new Bar(
        name,
        cases.part(),
        cases.whole(),
        place * STEP + 24,
        LONGEST * cases.whole() / unit,
        LONGEST * cases.part() / unit,
        marked);
  }
}
