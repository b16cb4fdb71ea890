package easewright.diagnosis;

import easewright.body.BandFit;
import easewright.body.BandPressure;
import easewright.body.CupGeometry;
import easewright.body.SeamAllowanceError;
import easewright.cloth.Estimate;
import easewright.measure.BodyMeasurements;
import easewright.measure.Measured;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.facts.Figure;
import easewright.size.SizeChance;
import easewright.size.SizeEstimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Derives every number the rules may judge. What cannot be computed for lack of data is simply not
 * there, so that no rule judges it.
 */
final class Figures {
  private final Fitting fitting;
  private final Draft draft;
  private final SizeEstimate sizes;
  private final RuleBookSource source;
  private final Shown shown;
  private final List<Figure> figures = new ArrayList<>();

  private Figures(Fitting fitting, Draft draft, SizeEstimate sizes, RuleBookSource source) {
    this.fitting = fitting;
    this.draft = draft;
    this.sizes = sizes;
    this.source = source;
    this.shown = new Shown(fitting.units());
  }

  /**
   * @param sizes the size estimate, or null without bust and underbust
   */
  static List<Figure> of(Fitting fitting, Draft draft, SizeEstimate sizes, RuleBookSource source) {
    Figures figures = new Figures(fitting, draft, sizes, source);
    figures.girths();
    figures.lengths();
    figures.sizes();
    figures.elastic();
    figures.making();
    figures.reported();
    figures.figures.addAll(ClothFigures.of(fitting, draft, source, figures.shown));
    return figures.figures;
  }

  private void girths() {
    BodyMeasurements body = fitting.body();
    Measured under = body.underbust();
    Measured bust = body.bust();
    if (under != null && bust != null) {
      double difference = bust.differenceMm(under);
      double sd = bust.differenceSdMm(under);
      add("bust-difference", difference, sd, "mm", "bust", bust.text(), "underbust", under.text());
      draft
          .differenceMm()
          .ifPresent(
              drafted ->
                  add(
                      "cup-shortfall",
                      difference - drafted,
                      sd,
                      "mm",
                      "difference",
                      shown.length(difference),
                      "drafted",
                      shown.length(drafted)));
      volume(difference, sd);
    }
    if (under != null) {
      draft.underbustMm().ifPresent(drafted -> excess("band-shortfall", under, drafted, "drafted"));
      band(under);
    }
    if (bust != null) {
      bustStrain(bust);
    }
  }

  private void band(Measured under) {
    Optional<Estimate> strain =
        draft
            .underband()
            .map(b -> new BandFit(under.value().mm(), b.value(), under.sdMm(), b.sd()).strain());
    strain.ifPresent(
        e -> {
          add(
              "band-strain",
              e.value(),
              e.sd(),
              "fraction",
              "underbust",
              under.text(),
              "underband",
              shown.length(draft.underband().orElseThrow().value()));
          draft.bandStrain().ifPresent(drafted -> overDrafted("band-strain-excess", e, drafted));
        });
  }

  private void bustStrain(Measured bust) {
    draft
        .bust()
        .map(b -> new BandFit(bust.value().mm(), b.value(), bust.sdMm(), b.sd()).strain())
        .ifPresent(
            e ->
                draft
                    .bustStrain()
                    .ifPresent(drafted -> overDrafted("bust-strain-excess", e, drafted)));
  }

  private void overDrafted(String id, Estimate strain, double drafted) {
    add(
        id,
        strain.value() - drafted,
        strain.sd(),
        "fraction",
        "strain",
        shown.percent(strain.value()),
        "drafted",
        shown.percent(drafted));
  }

  private void volume(double difference, double sd) {
    Measured width = fitting.body().bustPointWidth();
    if (width == null || !(difference > 0)) {
      return;
    }
    double share = source.parameter("cup-base-share");
    double base = width.value().mm() * share;
    double step = Math.min(sd, difference / 2);
    try {
      double up = CupGeometry.fromDifference(base, difference + step).volumeMl();
      double down = CupGeometry.fromDifference(base, difference - step).volumeMl();
      add(
          "cup-volume",
          CupGeometry.fromDifference(base, difference).volumeMl(),
          (up - down) / 2 * (sd / step),
          "ml",
          "base",
          shown.length(base),
          "share",
          shown.percent(share),
          "difference",
          shown.length(difference));
    } catch (IllegalArgumentException outsideTheModel) {
      // A difference too deep for a cap on this base: no volume is better than a wrong one.
      return;
    }
  }

  private void lengths() {
    BodyMeasurements body = fitting.body();
    against("bust-point-width-excess", body.bustPointWidth(), draft.bustPointWidthMm());
    against("apex-drop", body.shoulderToBustPoint(), draft.shoulderToBustPointMm());
    against("front-length-shortfall", body.shoulderToUnderbust(), draft.shoulderToUnderbustMm());
  }

  private void against(String id, Measured measured, Optional<Double> drafted) {
    if (measured != null) {
      drafted.ifPresent(mm -> excess(id, measured, mm, "measured"));
    }
  }

  private void excess(String id, Measured measured, double draftedMm, String blank) {
    add(
        id,
        measured.value().mm() - draftedMm,
        measured.sdMm(),
        "mm",
        blank.equals("measured") ? "measured" : "underbust",
        measured.text(),
        "drafted",
        shown.length(draftedMm));
  }

  private void sizes() {
    if (sizes == null) {
      return;
    }
    List<SizeChance> chances = sizes.chances();
    if (!chances.isEmpty()) {
      add("best-size-probability", chances.get(0).probability(), 0, "fraction");
    }
    if (chances.size() > 1) {
      add("runner-up-size-probability", chances.get(1).probability(), 0, "fraction");
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
    add(
        "elastic-tension",
        tension.value(),
        tension.sd(),
        "N/cm",
        "extension",
        shown.percent(extension));
    double girth = under.value().mm();
    add(
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
    add(
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
      String id = "amount-of-" + sign.id();
      if (sign.present()
          && sign.amount() != null
          && figures.stream().noneMatch(f -> f.id().equals(id))) {
        addSaid(
            id, "figure-amount", sign.amount().mm(), source.parameter("sign-amount-error"), "mm");
      }
    }
    Integer months = fitting.circumstances().monthsSinceOperation();
    if (months != null) {
      add("months-since-operation", months, 0, "months");
    }
    add("number-of-earlier-rounds", fitting.earlier().size(), 0, "count");
  }

  private void add(String id, double value, double sd, String unit, Object... blanks) {
    addSaid(id, "figure-" + id, value, sd, unit, blanks);
  }

  private void addSaid(
      String id, String sentence, double value, double sd, String unit, Object... blanks) {
    figures.add(ClothFigures.figure(source, shown, id, sentence, value, sd, unit, blanks));
  }
}
