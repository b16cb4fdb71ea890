package easewright.diagnosis;

import easewright.body.BandFit;
import easewright.body.BandPressure;
import easewright.cloth.Estimate;
import easewright.diagnosis.Answer.Amount;
import easewright.measure.Length;
import easewright.measure.Measured;
import easewright.measure.Quantity;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.facts.Figure;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Works out how much an adjustment changes: by computing where the numbers are known, by what the
 * wearer measured, or as a first step by the degree of the sign. Always the whole change, never
 * half.
 */
final class Amounts {
  private static final List<String> DEGREES = List.of("slight", "clear", "strong");

  private final Fitting fitting;
  private final Draft draft;
  private final Map<String, Figure> figures;
  private final RuleBookSource source;
  private final Shown shown;

  Amounts(Fitting fitting, Draft draft, Map<String, Figure> figures, RuleBookSource source) {
    this.fitting = fitting;
    this.draft = draft;
    this.figures = figures;
    this.source = source;
    this.shown = new Shown(fitting.units());
  }

  /**
   * An amount, or what to measure to get one; both when the amount is only a first step.
   *
   * @param amount null when it cannot be told
   * @param measureFirst null when nothing more needs measuring
   */
  record Told(Amount amount, String measureFirst) {}

  /**
   * @param signs the signs this change would relieve, as reported, the most telling first
   */
  Told of(AdjustmentEntry adjustment, List<ReportedSign> signs) {
    if (adjustment.method() == null || adjustment.method().equals("none")) {
      return new Told(null, null);
    }
    // What was measured on the toile beats what the tape lets us compute from afar.
    Optional<Amount> told =
        reported(adjustment.method(), signs).or(() -> computed(adjustment.method()));
    if (told.isPresent()) {
      return new Told(told.get(), null);
    }
    return new Told(firstStep(adjustment, signs), measureFirst(adjustment.method(), signs));
  }

  private Optional<Amount> computed(String method) {
    return switch (method) {
      case "band take-in" -> band(1);
      case "band let-out" -> band(-1);
      case "elastic cut length" -> elastic();
      case "cup girth" -> shortfall(method, "cup-shortfall", 1, "amount-cup-girth");
      case "cup girth less" -> shortfall(method, "cup-shortfall", -1, "amount-cup-girth-less");
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
      return positive(
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
    return positive(
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
    return positive(
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
    int shares =
        draft
            .cut()
            .map(
                cut ->
                    cut.share(1, "shaped-seam").stream()
                        .filter(share -> !share.copy())
                        .mapToInt(share -> share.piece().occurrences())
                        .sum())
            .filter(n -> n > 0)
            .orElse(4);
    return figure(figure)
        .flatMap(
            f ->
                positive(
                    method,
                    new Estimate(way * f.value(), f.sd()),
                    sentence,
                    "shortfall",
                    shown.length(way * f.value()),
                    "shares",
                    shares));
  }

  /** Across, each side carries half of the difference between the two bust points. */
  private Optional<Amount> bustPoint(String method, String figure, int way) {
    double share = figure.equals("apex-drop") ? 1 : 0.5;
    return figure(figure)
        .flatMap(
            f ->
                positive(
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
                            positive(
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
              return positive(
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

  /** The wearer's own measure of the sign that tells most. */
  private Optional<Amount> reported(String method, List<ReportedSign> signs) {
    double sd = source.parameter("sign-amount-error");
    return signs.stream()
        .filter(sign -> sign.amount() != null && measures(sign, method))
        .findFirst()
        .flatMap(
            sign ->
                positive(
                    method,
                    new Estimate(sign.amount().mm(), sd),
                    "amount-reported",
                    "sign",
                    source.catalog().nameOf(sign.id())));
  }

  private boolean measures(ReportedSign sign, String method) {
    List<String> measures = source.catalog().signs().get(sign.id()).measures();
    return measures != null && measures.contains(method);
  }

  private Amount firstStep(AdjustmentEntry adjustment, List<ReportedSign> signs) {
    if (adjustment.firstStep() == null || adjustment.firstStep().isEmpty()) {
      return null;
    }
    String degree =
        signs.stream()
            .map(ReportedSign::degree)
            .filter(Objects::nonNull)
            .max(Comparator.comparingInt(DEGREES::indexOf))
            .orElse("clear");
    double mm = Length.parse(adjustment.firstStep().get(degree)).mm();
    return amount(
        adjustment.method(),
        new Estimate(mm, mm * source.parameter("first-step-error")),
        source.wording().say("amount-first-step", "degree", degree),
        true);
  }

  private String measureFirst(String method, List<ReportedSign> signs) {
    boolean girths = fitting.body().bust() != null && fitting.body().underbust() != null;
    return switch (method) {
      case "band take-in", "band let-out" ->
          source
              .wording()
              .say(
                  fitting.body().underbust() == null
                      ? "measure-first-body"
                      : "measure-first-underband");
      case "elastic cut length" -> source.wording().say("measure-first-elastic");
      case "cup girth", "cup girth less" ->
          girths ? null : source.wording().say("measure-first-body");
      case "front length", "front length less" -> source.wording().say("measure-first-length");
      default ->
          signs.stream()
              .filter(sign -> measures(sign, method))
              .map(sign -> source.catalog().signs().get(sign.id()).amount())
              .findFirst()
              .map(what -> source.wording().say("measure-first-sign", "what", what))
              .orElse(null);
    };
  }

  private Optional<Amount> positive(
      String method, Estimate estimate, String sentence, Object... blanks) {
    if (!(estimate.value() > 0)) {
      return Optional.empty();
    }
    Object[] all = Arrays.copyOf(blanks, blanks.length + 2);
    all[blanks.length] = "value";
    all[blanks.length + 1] = shown.length(estimate.value());
    return Optional.of(amount(method, estimate, source.wording().say(sentence, all), false));
  }

  private Amount amount(String method, Estimate estimate, String working, boolean estimated) {
    return new Amount(
        shown.length(estimate.value()),
        tenth(estimate.value()),
        tenth(estimate.sd()),
        shown.length(estimate.sd()),
        method,
        working,
        estimated);
  }

  /** The part of an amount at one edge; parts of the amount as told, so that they add up to it. */
  Amount part(Amount whole, double share) {
    double told = Quantity.parse(whole.text()).length().mm();
    return new Amount(
        Length.ofMm(told * share).markedText(fitting.units()),
        tenth(told * share),
        tenth(whole.plusMinusMm() * share),
        shown.length(whole.plusMinusMm() * share),
        whole.method(),
        whole.working(),
        whole.estimated());
  }

  private static double tenth(double mm) {
    return Math.round(mm * 10) / 10.0;
  }
}
