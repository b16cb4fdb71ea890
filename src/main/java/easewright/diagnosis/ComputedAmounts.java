package easewright.diagnosis;

import easewright.body.BandFit;
import easewright.body.BandPressure;
import easewright.cloth.Estimate;
import easewright.diagnosis.Answer.Amount;
import easewright.measure.Length;
import easewright.measure.Measured;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.facts.Figure;
import java.util.Map;
import java.util.Optional;

/** Amounts computed from body, garment, cloth and elastic; empty where a number is missing. */
final class ComputedAmounts {
  private final Fitting fitting;
  private final Draft draft;
  private final Map<String, Figure> figures;
  private final RuleBookSource source;
  private final AmountWriter writer;
  private final CupAmounts cups;
  private final UnitFormatter shown;

  ComputedAmounts(
      Fitting fitting,
      Draft draft,
      Map<String, Figure> figures,
      RuleBookSource source,
      AmountWriter writer) {
    this.fitting = fitting;
    this.draft = draft;
    this.figures = figures;
    this.source = source;
    this.writer = writer;
    this.cups = new CupAmounts(fitting, draft, figures, source, writer);
    this.shown = new UnitFormatter(fitting.units());
  }

  Optional<Amount> of(String method) {
    return switch (method) {
      case "band take-in" -> band(1);
      case "band let-out" -> band(-1);
      case "elastic cut length" -> elastic();
      case "cup girth" -> cups.change(method, 1, "amount-cup-girth");
      case "cup girth less" -> cups.change(method, -1, "amount-cup-girth-less");
      case "front length" -> shortfall(method, "front-length-shortfall", 1, "amount-front-length");
      case "front length less" ->
          shortfall(method, "front-length-shortfall", -1, "amount-front-length-less");
      case "bust point in" -> bustPoint(method, "bust-point-width-excess", -1);
      case "bust point out" -> bustPoint(method, "bust-point-width-excess", 1);
      case "bust point up" -> bustPoint(method, "apex-drop", -1);
      case "bust point down" -> bustPoint(method, "apex-drop", 1);
      case "stretch factor" -> stretchFactor();
      case "allowance error" -> allowance();
      default -> Optional.empty();
    };
  }

  /** Take-in (way +1) or let-out (way −1) that brings the band to the strain it is drafted for. */
  private Optional<Amount> band(int way) {
    Measured under = fitting.body().underbust();
    double target = draft.bandStrain().orElse(source.parameter("target-band-strain"));
    if (under != null && draft.underband().isPresent()) {
      Estimate band = draft.underband().get();
      Estimate change =
          new BandFit(under.value().mm(), band.value(), under.sdMm(), band.sd()).takeInMm(target);
      return writer.positive(
          way > 0 ? "band take-in" : "band let-out",
          new Estimate(way * change.value(), change.sd()),
          way > 0 ? "amount-band-take-in" : "amount-band-let-out",
          "underband",
          shown.length(band.value()),
          "underbust",
          under.text(),
          "target",
          shown.percent(target));
    }
    return way > 0 && under != null ? pullOff(under) : Optional.empty();
  }

  /**
   * How much longer than the body the finished band measures: taken in by it, the band meets the
   * body unstretched. Less than that by a rounding, never more.
   */
  Optional<Amount> slackOfTheBand() {
    Measured under = fitting.body().underbust();
    Length band = fitting.garment().underband();
    if (under == null || band == null) {
      return Optional.empty();
    }
    double longer = band.mm() - under.value().mm();
    return writer.positive(
        "band take-in",
        new Estimate(writer.shownAtMost(longer), under.sdMm()),
        "amount-slack-of-the-band",
        "underband",
        shown.length(band.mm()),
        "underbust",
        under.text());
  }

  private Optional<Amount> pullOff(Measured under) {
    Figure gap = figures.get("amount-of-band-pulls-off-the-body");
    if (gap == null) {
      return Optional.empty();
    }
    double girth = under.value().mm();
    double normal = source.parameter("normal-pull-off");
    double slack = BandFit.pullOffSlackMm(girth, gap.value());
    double allowed = BandFit.pullOffSlackMm(girth, normal);
    double more = BandFit.pullOffSlackMm(girth, gap.value() + gap.sd());
    return writer.positive(
        "band take-in",
        new Estimate(slack - allowed, more - slack),
        "amount-band-take-in-pull",
        "gap",
        shown.length(gap.value()),
        "slack",
        shown.length(slack),
        "normal",
        shown.length(normal),
        "allowed",
        shown.length(allowed));
  }

  private Optional<Amount> elastic() {
    ElasticReport elastic = fitting.elastic();
    Measured under = fitting.body().underbust();
    if (elastic == null || elastic.test() == null || elastic.cut() == null || under == null) {
      return Optional.empty();
    }
    double pressure = source.parameter("target-elastic-pressure");
    double girth = under.value().mm();
    double extension =
        elastic.test().extensionAt(BandPressure.ofKPa(pressure, girth).tensionNPerCm());
    if (extension > elastic.test().limit()) {
      return Optional.empty();
    }
    double joining = source.parameter("elastic-joining");
    double length = elastic.test().cutLengthMm(girth, extension, joining);
    Estimate change = Estimate.of(elastic.cut().mm() - length, under.sdMm() / (1 + extension));
    return writer.positive(
        "elastic cut length",
        change,
        "amount-elastic-cut-length",
        "pressure",
        shown.value(pressure, "kPa"),
        "extension",
        shown.percent(extension),
        "underbust",
        under.text(),
        "joining",
        shown.length(joining),
        "length",
        shown.length(length),
        "cut",
        shown.length(elastic.cut().mm()));
  }

  private Optional<Amount> shortfall(String method, String figure, int way, String sentence) {
    return figure(figure)
        .flatMap(
            f ->
                writer.positive(
                    method,
                    new Estimate(way * f.value(), f.sd()),
                    sentence,
                    "shortfall",
                    shown.length(way * f.value())));
  }

  /** Across, each side carries half of the difference between the two bust points. */
  private Optional<Amount> bustPoint(String method, String figure, int way) {
    double share = figure.equals("apex-drop") ? 1 : 0.5;
    return figure(figure)
        .flatMap(
            f ->
                writer.positive(
                    method,
                    new Estimate(way * f.value() * share, f.sd() * share),
                    share == 1 ? "amount-bust-point" : "amount-bust-point-half",
                    "working",
                    f.formula()));
  }

  private Optional<Amount> stretchFactor() {
    return figure("width-factor")
        .flatMap(
            factor ->
                draft
                    .bust()
                    .flatMap(
                        girth ->
                            writer.positive(
                                "stretch factor",
                                new Estimate(
                                    girth.value() * (factor.value() - 1),
                                    girth.value() * factor.sd()),
                                "amount-stretch-factor",
                                "factor",
                                shown.value(factor.value(), "factor"),
                                "girth",
                                shown.length(girth.value()))));
  }

  private Optional<Amount> allowance() {
    return figure("allowance-girth-error")
        .flatMap(
            error -> {
              Making making = fitting.making();
              Integer seams =
                  making.seams() != null ? making.seams() : draft.seamsAround().orElse(1);
              return writer.positive(
                  "allowance error",
                  new Estimate(Math.abs(error.value()), error.sd()),
                  "amount-allowance-error",
                  "seams",
                  seams,
                  "difference",
                  shown.length(Math.abs(error.value()) / (2.0 * seams)));
            });
  }

  private Optional<Figure> figure(String id) {
    return Optional.ofNullable(figures.get(id));
  }
}
