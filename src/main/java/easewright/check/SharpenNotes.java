package easewright.check;

import easewright.check.SizeAnswer.SharpenNote;
import easewright.diagnosis.UnitFormatter;
import easewright.fitting.Fitting;
import easewright.measure.Measured;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import easewright.size.SizeChart;
import java.util.List;

/** Words the value of a further, better measurement of each girth. */
final class SharpenNotes {
  private final RuleBookSource source;
  private final Wording wording;

  SharpenNotes(RuleBookSource source) {
    this.source = source;
    this.wording = source.wording();
  }

  /** One note for each girth that tells sizes apart, the most worthwhile first. */
  List<SharpenNote> of(Fitting fitting, SizeChart chart) {
    Measured bust = fitting.body().bust();
    Measured under = fitting.body().underbust();
    Sharpening sharpening = new Sharpening(chart);
    double now = sharpening.now(bust, under);
    double betterBust = sharpening.withBetterBust(bust, under);
    if (chart.goesByBustAlone()) {
      return List.of(note("bust", fitting, bust, now, betterBust, true));
    }
    double betterUnder = sharpening.withBetterUnderbust(bust, under);
    boolean bustFirst = betterBust >= betterUnder;
    SharpenNote ofBust = note("bust", fitting, bust, now, betterBust, bustFirst);
    SharpenNote ofUnder = note("underbust", fitting, under, now, betterUnder, !bustFirst);
    return bustFirst ? List.of(ofBust, ofUnder) : List.of(ofUnder, ofBust);
  }

  private SharpenNote note(
      String name, Fitting fitting, Measured measured, double now, double then, boolean first) {
    UnitFormatter shown = new UnitFormatter(fitting.units());
    boolean worthwhile = then - now >= source.parameter("worth-measuring-again");
    return new SharpenNote(
        name,
        measured.sdMm(),
        shown.length(measured.sdMm()),
        now,
        then,
        Math.max(0, then - now),
        worthwhile,
        wording.say(
            !worthwhile ? "sharpen-little" : first ? "sharpen" : "sharpen-too",
            "measurement",
            source.measures().names().get(name),
            "now",
            shown.percent(now),
            "then",
            shown.percent(then)));
  }
}
