package easewright.diagnosis;

import easewright.body.BandPressure;
import easewright.body.SeamAllowanceError;
import easewright.cloth.Estimate;
import easewright.measure.Measured;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.facts.Figure;
import easewright.size.SizeChance;
import easewright.size.SizeEstimate;
import java.util.List;

/**
 * Derives every number the rules may judge. What cannot be computed for lack of data is simply not
 * there, so that no rule judges it.
 */
final class Figures {
  private final Fitting fitting;
  private final Draft draft;
  private final SizeEstimate sizes;
  private final RuleBookSource source;
  private final UnitFormatter shown;
  private final FigureWriter figures;

  private Figures(
      Fitting fitting,
      Draft draft,
      SizeEstimate sizes,
      RuleBookSource source,
      UnitFormatter shown,
      FigureWriter figures) {
    this.fitting = fitting;
    this.draft = draft;
    this.sizes = sizes;
    this.source = source;
    this.shown = shown;
    this.figures = figures;
  }

  /**
   * @param sizes the size estimate, or null without bust and underbust
   */
  static List<Figure> of(Fitting fitting, Draft draft, SizeEstimate sizes, RuleBookSource source) {
    UnitFormatter shown = new UnitFormatter(fitting.units());
    FigureWriter writer = new FigureWriter(source.wording(), shown);
    new BodyFigures(fitting, draft, source, writer, shown).derive();
    new ClothFigures(fitting, draft, writer, shown).derive();
    Figures figures = new Figures(fitting, draft, sizes, source, shown, writer);
    figures.sizes();
    figures.elastic();
    figures.making();
    figures.reported();
    return writer.figures();
  }

  private void sizes() {
    if (sizes == null) {
      return;
    }
    List<SizeChance> chances = sizes.chances();
    if (!chances.isEmpty()) {
      figures.add("best-size-probability", chances.get(0).probability(), 0, "fraction");
    }
    if (chances.size() > 1) {
      figures.add("runner-up-size-probability", chances.get(1).probability(), 0, "fraction");
    }
  }

  private void elastic() {
    Measured under = fitting.body().underbust();
    ElasticReport elastic = fitting.elastic();
    if (elastic == null || elastic.test() == null || elastic.cut() == null || under == null) {
      return;
    }
    double relaxed = elastic.cut().mm() - source.parameter("elastic-joining");
    double extension = under.value().mm() / relaxed - 1;
    if (!(relaxed > 0) || !(extension >= 0)) {
      return;
    }
    Estimate tension = elastic.test().tensionNPerCm(extension);
    figures.add(
        "elastic-tension",
        tension.value(),
        tension.sd(),
        "N/cm",
        "extension",
        shown.percent(extension));
    double girth = under.value().mm();
    figures.add(
        "band-pressure",
        new BandPressure(tension.value(), girth).kPa(),
        new BandPressure(tension.sd(), girth).kPa(),
        "kPa",
        "tension",
        shown.value(tension.value(), "N/cm"),
        "girth",
        under.text());
  }

  private void making() {
    Making making = fitting.making();
    Integer seams = making.seams() != null ? making.seams() : draft.seamsAround().orElse(null);
    Double planned =
        making.seamAllowancePlanned() != null
            ? Double.valueOf(making.seamAllowancePlanned().mm())
            : draft.seamAllowanceMm().orElse(null);
    if (making.seamAllowanceSewn() == null || planned == null || seams == null) {
      return;
    }
    double sewn = making.seamAllowanceSewn().mm();
    figures.add(
        "allowance-girth-error",
        new SeamAllowanceError(seams, planned, sewn).girthChangeMm(),
        0,
        "mm",
        "seams",
        seams,
        "planned",
        shown.length(planned),
        "sewn",
        shown.length(sewn));
  }

  private void reported() {
    for (ReportedSign sign : fitting.signs()) {
      String id = RuleWords.AMOUNT_OF + sign.id();
      if (sign.present()
          && sign.amount() != null
          && figures.figures().stream().noneMatch(f -> f.id().equals(id))) {
        figures.say(
            id, "figure-amount", sign.amount().mm(), source.parameter("sign-amount-error"), "mm");
      }
    }
    Integer months = fitting.circumstances().monthsSinceOperation();
    if (months != null) {
      figures.add("months-since-operation", months, 0, "months");
    }
    figures.add("number-of-earlier-rounds", fitting.earlier().size(), 0, "count");
  }
}
