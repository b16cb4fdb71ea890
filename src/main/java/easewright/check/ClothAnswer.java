package easewright.check;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CautionNote;
import easewright.diagnosis.Answer.ClothFigure;
import easewright.diagnosis.Answer.FindingNote;
import easewright.diagnosis.Answer.RuleBookStamp;
import java.util.List;

/**
 * What the cloths and the elastic are fit for. Stretch, growth, recovery and margins are fractions;
 * errors are one standard deviation.
 *
 * @param ruleBook which rules were used
 * @param cautions what may hurt; dangers come first, the most urgent before the others
 * @param notNow what is left out because of a caution, and why; null where nothing is
 * @param layers each cloth tested, against its own need
 * @param together all layers worn as one; empty below two layers
 * @param width what the cloths make of the draft's widths; null without a need
 * @param elastic the band elastic; null when not tested
 * @param findings what the rule book judges of these numbers
 * @param protocol how to test cloth and elastic at home, step by step
 */
public record ClothAnswer(
    RuleBookStamp ruleBook,
    List<CautionNote> cautions,
    String notNow,
    List<LayerNote> layers,
    List<TogetherNote> together,
    WidthNote width,
    ElasticNote elastic,
    List<FindingNote> findings,
    ProtocolNote protocol) {

  /** An answer that is about a danger and nothing else. */
  static ClothAnswer ofDanger(Answer judged) {
    return new ClothAnswer(
        judged.ruleBook(),
        judged.cautions(),
        judged.notNow(),
        List.of(),
        List.of(),
        null,
        null,
        List.of(),
        new ProtocolNote(List.of(), List.of()));
  }

  /**
   * One cloth.
   *
   * @param role "main", "lining" or "support"
   * @param handbookClass class by its greater stretch
   * @param classAround class by its stretch around the body
   * @param verdict "suits", "marginal", "does not suit" or "no need stated"
   * @param tests stretch, growth and recovery in both directions
   * @param margins what it has beyond what the sheet asks; negative where it falls short
   * @param weightMarginGsm distance inside the weight window, g/m²; null when not known
   * @param direction where the greatest stretch runs
   * @param untested what the sheet asks and nobody tested
   * @param widthFactor what this layer alone would multiply the draft's widths by, laid as advised;
   *     null without a need, and where nothing may come out narrower and this would be
   * @param widthFactorPlusMinus its error; null with it
   */
  public record LayerNote(
      String role,
      String handbookClass,
      String classAround,
      String verdict,
      List<ClothFigure> tests,
      List<MarginNote> margins,
      Double weightMarginGsm,
      DirectionNote direction,
      List<String> untested,
      Double widthFactor,
      Double widthFactorPlusMinus) {

    /** The same without a factor that would make anything narrower. */
    LayerNote noNarrower() {
      return widthFactor == null || widthFactor >= 1
          ? this
          : new LayerNote(
              role,
              handbookClass,
              classAround,
              verdict,
              tests,
              margins,
              weightMarginGsm,
              direction,
              untested,
              null,
              null);
    }
  }

  /**
   * A need and what the cloth has of it.
   *
   * @param met probability that the need is met, given the error of the test
   */
  public record MarginNote(
      String property,
      String direction,
      double need,
      double has,
      double margin,
      double plusMinus,
      double met,
      String text) {}

  /**
   * Where the greatest stretch runs and how to lay the cloth.
   *
   * @param greatest "around", "along" or "either"; null when only one direction was tried
   * @param turned the verdict if the pieces were laid a quarter turn round; null when not better
   */
  public record DirectionNote(String greatest, String lay, String turned) {}

  /**
   * The widths of the draft, the same for all layers: the layer that needs most room decides.
   *
   * @param layer the layer that decides
   * @param factor what to multiply widths by
   * @param change factor − 1
   * @param advice "as-drafted", "scale", "other-cloth" or "not-narrower"
   */
  public record WidthNote(
      String layer, double factor, double plusMinus, double change, String advice, String says) {}

  /** The layers worn as one in a direction: the one that stretches least stops the others. */
  public record TogetherNote(
      String direction, String limiting, double stretch, double plusMinus, String says) {}

  /**
   * The band elastic.
   *
   * @param testedExtension its extension under the weight, a fraction
   * @param tensionNPerCm its tension under the weight, N per cm of width
   * @param limit the greatest extension to wear, half its stretch
   * @param worn as cut; null when the cut length or the underbust was not given
   * @param advised as it would be cut for the pressure aimed at; null without an underbust
   */
  public record ElasticNote(
      double testedExtension,
      double tensionNPerCm,
      double tensionPlusMinus,
      double limit,
      WornNote worn,
      CutNote advised) {}

  /**
   * An elastic in wear.
   *
   * @param window "below", "comfortable", "firm" or "complaint"
   * @param beyondLimit whether it is stretched further than half of what it is known to bear
   * @param sidesKPa about the pressure at the sides, where a trunk curves most
   * @param frontKPa about the pressure at front and back
   */
  public record WornNote(
      double extension,
      boolean beyondLimit,
      double tensionNPerCm,
      double kPa,
      double plusMinusKPa,
      double mmHg,
      double sidesKPa,
      double frontKPa,
      String window,
      String says) {}

  /**
   * A length to cut.
   *
   * @param mm joining included
   * @param suits "suits", "too-soft", "too-firm" or "end-stop-unread" for the pressure aimed at
   */
  public record CutNote(
      double mm,
      String text,
      double plusMinusMm,
      String plusMinus,
      double targetKPa,
      WornNote worn,
      String suits,
      String says) {}

  /** How to test at home. */
  public record ProtocolNote(List<String> cloth, List<String> elastic) {}
}
