package easewright.diagnosis;

import easewright.diagnosis.Answer.SizeAdvice;
import easewright.diagnosis.Answer.SystemLabel;
import easewright.fitting.Fitting;
import easewright.measure.Measured;
import easewright.pattern.PatternSheet;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import easewright.size.SizeCell;
import easewright.size.SizeChance;
import easewright.size.SizeChart;
import easewright.size.SizeEstimate;
import easewright.size.SizeSystem;
import java.util.Collection;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Tells the size to cut, on the pattern's own chart or by EN 13402-3. */
final class Sizing {
  private static final double EVEN_ODDS = 0.5;

  private final Map<PatternSheet, SizeChart> charts = new IdentityHashMap<>();
  private final RuleBookSource source;
  private final Wording wording;
  private final double leastNeighbour;

  /**
   * @param shipped sheets whose charts are worth keeping
   */
  Sizing(Collection<PatternSheet> shipped, RuleBookSource source) {
    shipped.forEach(sheet -> charts.put(sheet, sheet.chart()));
    this.source = source;
    this.wording = source.wording();
    this.leastNeighbour = source.parameter("size-neighbour");
  }

  /** The estimate on the pattern's chart, or EN 13402-3's; empty without bust and underbust. */
  Optional<SizeEstimate> estimate(Fitting fitting) {
    Measured bust = fitting.body().bust();
    Measured under = fitting.body().underbust();
    SizeChart chart = chart(fitting.sheet());
    return bust == null || under == null && !chart.goesByBustAlone()
        ? Optional.empty()
        : Optional.of(chart.estimate(bust, under));
  }

  private SizeChart chart(PatternSheet sheet) {
    if (sheet == null) {
      return SizeSystem.EN.chart();
    }
    SizeChart kept = charts.get(sheet);
    return kept == null ? sheet.chart() : kept;
  }

  /** Whether the most probable size is known to be no smaller than the one cut. */
  boolean isNoSmaller(Fitting fitting, SizeEstimate estimate) {
    return estimate != null
        && estimate.best().map(best -> isNoSmaller(fitting, best.cell())).orElse(false);
  }

  private boolean isNoSmaller(Fitting fitting, SizeCell size) {
    SizeChart chart = chart(fitting.sheet());
    return chart.cell(fitting.sizeCut()).map(cut -> chart.isAtLeast(size, cut)).orElse(false);
  }

  /**
   * The size to cut.
   *
   * @param nothingTighter whether no size is named that may be smaller than the one cut
   * @param lean whether it is not said in other systems
   */
  SizeAdvice advice(Fitting fitting, SizeEstimate estimate, boolean nothingTighter, boolean lean) {
    return nothingTighter
        ? noSmaller(fitting, estimate)
        : advice(fitting, estimate, lean ? List.of() : inSystems(fitting));
  }

  /** Sisters are smaller in band or cup by nature; labels elsewhere can't be compared. */
  private SizeAdvice noSmaller(Fitting fitting, SizeEstimate estimate) {
    boolean named = isNoSmaller(fitting, estimate);
    SizeAdvice whole = advice(fitting, estimate, List.of());
    return new SizeAdvice(
        named ? whole.recommended() : null,
        named
            ? estimate.neighbours(leastNeighbour).stream()
                .filter(chance -> isNoSmaller(fitting, chance.cell()))
                .map(Sizing::chance)
                .toList()
            : List.of(),
        List.of(),
        whole.outsideChart(),
        whole.insideChart(),
        named ? whole.cutVersusRecommended() : null,
        List.of(),
        wording.say(named ? "size-smaller-withheld" : "size-withheld"),
        whole.tapeError(),
        named ? whole.alsoCalled() : List.of(),
        null,
        whole.hint(),
        whole.sides());
  }

  private SizeAdvice advice(Fitting fitting, SizeEstimate estimate, List<SystemLabel> inSystems) {
    SizeChart chart = chart(fitting.sheet());
    Optional<SizeChance> best = estimate.best();
    SizeRemarks remarks = new SizeRemarks(fitting, chart, source);
    return new SizeAdvice(
        best.map(Sizing::chance).orElse(null),
        estimate.neighbours(leastNeighbour).stream().map(Sizing::chance).toList(),
        best.map(chance -> chart.sisters(chance.cell())).orElse(List.of()).stream()
            .map(
                cell ->
                    new Answer.SizeChance(
                        cell.id(), Explaining.rounded(estimate.probability(cell.id()))))
            .toList(),
        Explaining.rounded(estimate.outside()),
        estimate.outside() < EVEN_ODDS,
        best.map(chance -> compared(fitting.sizeCut(), chance)).orElse(null),
        inSystems,
        null,
        TapeErrors.of(fitting, wording),
        remarks.alsoCalled(best.map(chance -> chance.cell().id()).orElse(null)),
        remarks.shared(),
        remarks.hint(),
        remarks.sides());
  }

  private String compared(String cut, SizeChance best) {
    if (cut == null) {
      return null;
    }
    String recommended = best.cell().id();
    return recommended.equals(cut)
        ? wording.say("cut-as-recommended", "cut", cut)
        : wording.say("cut-differs", "cut", cut, "recommended", recommended);
  }

  private List<SystemLabel> inSystems(Fitting fitting) {
    return Stream.of(SizeSystem.EN, SizeSystem.JIS, SizeSystem.UK, SizeSystem.US)
        .flatMap(system -> label(system, fitting).stream())
        .toList();
  }

  private Optional<SystemLabel> label(SizeSystem system, Fitting fitting) {
    if (fitting.body().underbust() == null) {
      return Optional.empty();
    }
    return system
        .chart()
        .best(fitting.body().bust(), fitting.body().underbust())
        .map(
            best ->
                new SystemLabel(
                    wording.say("system-" + system.name().toLowerCase(Locale.ROOT)),
                    best.cell().id(),
                    Explaining.rounded(best.probability())));
  }

  private static Answer.SizeChance chance(SizeChance chance) {
    return new Answer.SizeChance(chance.cell().id(), Explaining.rounded(chance.probability()));
  }
}
