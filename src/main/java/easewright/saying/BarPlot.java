package easewright.saying;

import easewright.saying.InsightNotes.FaultNote;
import easewright.saying.InsightNotes.InsightNote;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Counts as lying bars, each below its name, for a drawing {@value #WIDTH} units wide that stays
 * legible on a narrow screen.
 *
 * @param id told apart from other plots of the same page by this
 * @param bars from the top
 */
public record BarPlot(String id, List<Bar> bars) {
  static final int WIDTH = 360;

  /** As many causes are drawn; the table has all. */
  static final int MOST_BARS = 12;

  private static final int STEP = 46;
  private static final int LONGEST = 268;

  public BarPlot {
    bars = List.copyOf(bars);
  }

  /**
   * A bar that is full as far as its part of the whole.
   *
   * @param y its upper end
   * @param length of the whole
   * @param filled of the part
   * @param marked whether it is one of those spoken of
   */
  public record Bar(
      String name, int part, int whole, int y, int length, int filled, boolean marked) {}

  /** How high the drawing is. */
  public int height() {
    return bars.size() * STEP + 6;
  }

  /** A clinic's causes as a drawing to stand alone. */
  public static String drawing(InsightNote insight) {
    return InsightPages.drawing(insight, ofCauses(insight)).render();
  }

  /** How many cases have each cause, of all looked at. */
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

  /** How many cases have a fault, of those cut in each cup, band or size. */
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
