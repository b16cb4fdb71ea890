package easewright.check;

import easewright.body.BandPressure;
import easewright.check.ClothAnswer.CutNote;
import easewright.check.ClothAnswer.ElasticNote;
import easewright.check.ClothAnswer.WornNote;
import easewright.cloth.ElasticTest;
import easewright.cloth.Estimate;
import easewright.diagnosis.UnitFormatter;
import easewright.fitting.ElasticReport;
import easewright.measure.Measured;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;

/** Computes the tension and pressure of a band elastic in wear, and its cut length. */
final class ElasticCheck {
  private static final double HAIR = 1e-9;

  // An elliptical trunk of 28 by 24 cm has a girth of 81.8 cm and a radius of curvature of 10.3 cm
  // at its sides and of 16.3 cm front and back (computed); here as fractions of the girth.
  private static final double SIDES = 103 / 818.0;
  private static final double FRONT = 163 / 818.0;

  private final RuleBookSource source;
  private final Wording wording;
  private final UnitFormatter shown;
  private final boolean nothingTighter;

  ElasticCheck(RuleBookSource source, UnitFormatter shown, boolean nothingTighter) {
    this.source = source;
    this.wording = source.wording();
    this.shown = shown;
    this.nothingTighter = nothingTighter;
  }

  /**
   * The elastic as tested and on this body.
   *
   * @param underbust null if not measured
   */
  ElasticNote of(ElasticReport elastic, Measured underbust) {
    ElasticTest test = elastic.test();
    Estimate tension = test.tensionNPerCm(test.testedExtension());
    return new ElasticNote(
        test.testedExtension(),
        tension.value(),
        tension.sd(),
        test.limit(),
        underbust == null || elastic.cut() == null ? null : asCut(elastic, underbust),
        underbust == null ? null : advised(elastic, underbust));
  }

  private WornNote asCut(ElasticReport elastic, Measured underbust) {
    double sewn = elastic.cut().mm() - source.parameter("elastic-joining");
    // An elastic longer than the body exerts no pressure.
    double extension = Math.max(0, underbust.value().mm() / sewn - 1);
    return worn(elastic.test(), underbust, extension, underbust.sdMm() / sewn);
  }

  private WornNote worn(
      ElasticTest test, Measured underbust, double extension, double extensionSd) {
    Estimate tension = test.tensionNPerCm(extension);
    double girth = underbust.value().mm();
    BandPressure band = new BandPressure(tension.value(), girth);
    double kPa = band.kPa();
    double perTension = new BandPressure(1, girth).kPa();
    double perExtension = new BandPressure(test.tensionNPerCm(1).value(), girth).kPa();
    Estimate pressure = Estimate.of(kPa, tension.sd() * perTension, extensionSd * perExtension);
    String window = window(kPa);
    boolean beyond = extension > test.limit() + HAIR;
    return new WornNote(
        extension,
        beyond,
        tension.value(),
        kPa,
        pressure.sd(),
        BandPressure.toMmHg(kPa),
        band.kPaWhereRadiusIs(girth * SIDES),
        band.kPaWhereRadiusIs(girth * FRONT),
        window,
        wording.say(
            beyond && !window.equals("complaint")
                ? "pressure-beyond-limit"
                : "pressure-" + window));
  }

  private String window(double kPa) {
    if (kPa >= source.parameter("complaint-band-pressure")) {
      return "complaint";
    }
    if (kPa > source.parameter("comfortable-band-pressure")) {
      return "firm";
    }
    return kPa < source.parameter("least-band-pressure") ? "below" : "comfortable";
  }

  /** The length to cut; null if nothing may become tighter and it would be shorter than now. */
  private CutNote advised(ElasticReport elastic, Measured underbust) {
    CutNote length = advised(elastic.test(), underbust);
    boolean shorter = elastic.cut() != null && length.mm() < elastic.cut().mm();
    return nothingTighter && shorter ? null : length;
  }

  private CutNote advised(ElasticTest test, Measured underbust) {
    double target =
        source.parameter(nothingTighter ? "soft-elastic-pressure" : "target-elastic-pressure");
    double girth = underbust.value().mm();
    double wanted = test.extensionAt(BandPressure.ofKPa(target, girth).tensionNPerCm());
    double most = Math.min(test.limit(), source.parameter("most-worn-extension"));
    double extension = Math.min(wanted, most);
    double mm = test.cutLengthMm(girth, extension, source.parameter("elastic-joining"));
    // The extension for a tension has the same relative error as the tension at an extension.
    Estimate unit = test.tensionNPerCm(1);
    double extensionSd = wanted > extension ? 0 : extension * unit.sd() / unit.value();
    Estimate length =
        Estimate.of(
            mm,
            underbust.sdMm() / (1 + extension),
            extensionSd * girth / Math.pow(1 + extension, 2));
    String suits = suits(test, wanted, most);
    return new CutNote(
        mm,
        shown.length(mm),
        length.sd(),
        shown.length(length.sd()),
        target,
        worn(test, underbust, extension, 0),
        suits,
        wording.say(
            nothingTighter && suits.equals("too-soft")
                ? "elastic-too-soft-alone"
                : "elastic-" + suits,
            "extension",
            shown.percent(extension)));
  }

  private String suits(ElasticTest test, double wanted, double most) {
    if (wanted > most) {
      // Half of a stretch measured only up to the weight says little about the elastic's limit.
      return test.fullMm() == null ? "end-stop-unread" : "too-soft";
    }
    return wanted < source.parameter("least-worn-extension") ? "too-firm" : "suits";
  }
}
