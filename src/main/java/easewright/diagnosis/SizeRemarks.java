package easewright.diagnosis;

import easewright.diagnosis.Answer.SidesNote;
import easewright.diagnosis.Answer.SizeNameNote;
import easewright.fitting.Fitting;
import easewright.fitting.Sides;
import easewright.measure.BodyMeasurements;
import easewright.pattern.PatternSheet;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import easewright.size.SizeChart;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.NormalDistribution;

/** What is worth saying of a size beside its odds. Bust must be measured, as must what it needs. */
public final class SizeRemarks {
  /** Without the random numbers it comes with, since setting those up costs more than all else. */
  private static final NormalDistribution STANDARD = new NormalDistribution(null, 0, 1);

  private final Fitting fitting;
  private final SizeChart chart;
  private final RuleBookSource source;
  private final Wording wording;

  /**
   * @param chart the sizes to choose from
   */
  public SizeRemarks(Fitting fitting, SizeChart chart, RuleBookSource source) {
    this.fitting = fitting;
    this.chart = chart;
    this.source = source;
    this.wording = source.wording();
  }

  /** What the sheet also calls a size of this name; none without a sheet. */
  public List<SizeNameNote> alsoCalled(String size) {
    PatternSheet sheet = fitting.sheet();
    return sheet == null || size == null
        ? List.of()
        : sheet.size(size).orElseThrow().aliases().stream()
            .map(
                alias ->
                    new SizeNameNote(
                        alias.region() == null ? null : alias.region().wireName(), alias.label()))
            .toList();
  }

  /** That the girths measured belong to several sizes alike; null where they do not. */
  public String shared() {
    List<String> sizes = chart.holding(fitting.body().bust(), fitting.body().underbust());
    return sizes.size() < 2
        ? null
        : wording.say("size-shared", "sizes", String.join(wording.say("size-and"), sizes));
  }

  /** Whether another place than the bust or a slack tape would explain so small a difference. */
  public String hint() {
    BodyMeasurements body = fitting.body();
    OptionalDouble least =
        chart.cells().stream()
            .filter(cell -> cell.difference() != null)
            .mapToDouble(cell -> cell.difference().loMm())
            .min();
    if (least.isEmpty()) {
      return null;
    }
    double sds =
        (least.getAsDouble() - body.bust().differenceMm(body.underbust()))
            / body.bust().differenceSdMm(body.underbust());
    double tooFlat = STANDARD.cumulativeProbability(sds);
    return tooFlat >= source.parameter("too-flat-for-the-chart")
        ? wording.say("size-too-flat")
        : null;
  }

  /** What to do about sides that differ; null where the size does not follow one of them. */
  public SidesNote sides() {
    Sides sides = Sides.of(fitting);
    return sides == null || !sides.differ(source.parameter("sides-differ"))
        ? null
        : new SidesNote(
            sides.larger(),
            sides.byMm(),
            wording.say(
                "size-sides",
                "larger",
                sides.larger(),
                "by",
                new UnitFormatter(fitting.units()).length(sides.byMm())));
  }
}
