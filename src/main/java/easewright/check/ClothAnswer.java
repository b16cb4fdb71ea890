package easewright.check;

import com.fasterxml.jackson.annotation.JsonView;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CautionNote;
import easewright.diagnosis.Answer.ClothFigure;
import easewright.diagnosis.Answer.FindingNote;
import easewright.diagnosis.Answer.RuleBookStamp;
import java.util.List;

/**
 * What the cloths and the elastic are suitable for. Stretch, growth, recovery and margins are
 * fractions; errors are one standard deviation.
 *
 * @param ruleBook the rule book used
 * @param cautions safety cautions; dangers come first, the most urgent before the others
 * @param notNow what is left out because of a caution, and why; null if nothing is
 * @param layers each tested cloth compared with its own requirement
 * @param together all layers worn as one; empty for fewer than two layers
 * @param width the effect of the cloths on the draft's widths; null without a requirement
 * @param elastic the band elastic; null if not tested
 * @param findings the rule book's findings from these numbers
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
    @JsonView(Answer.Full.class) ProtocolNote protocol) {

  /** An answer about a danger only. */
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
   * @param margins its values minus the sheet's requirements; negative if it falls short
   * @param weightMarginGsm distance inside the weight window, g/m²; null if unknown
   * @param direction where the greatest stretch runs
   * @param untested requirements of the sheet that were not tested
   * @param widthFactor factor for the draft's widths from this layer alone, laid as advised; null
   *     without a requirement, or if it would be narrower and nothing may be
   * @param widthFactorPlusMinus its error; null if the factor is
   */
  public record LayerNote(
      String role,
      String handbookClass,
      @JsonView(Answer.Full.class) String classAround,
      String verdict,
      @JsonView(Answer.Full.class) List<ClothFigure> tests,
      List<MarginNote> margins,
      Double weightMarginGsm,
      DirectionNote direction,
      List<String> untested,
      @JsonView(Answer.Full.class) Double widthFactor,
      @JsonView(Answer.Full.class) Double widthFactorPlusMinus) {

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
   * A requirement and the cloth's value.
   *
   * @param met probability that the requirement is met, given the error of the test
   */
  public record MarginNote(
      String property,
      String direction,
      @JsonView(Answer.Full.class) double need,
      @JsonView(Answer.Full.class) double has,
      @JsonView(Answer.Full.class) double margin,
      @JsonView(Answer.Full.class) double plusMinus,
      double met,
      String text) {}

  /**
   * Where the greatest stretch runs and how to lay the cloth.
   *
   * @param greatest "around", "along" or "either"; null if only one direction was tested
   * @param turned the verdict if the pieces were laid turned by 90°; null if not better
   */
  public record DirectionNote(String greatest, String lay, String turned) {}

  /**
   * The widths of the draft, the same for all layers: the layer that needs the most room decides.
   *
   * @param layer the layer that decides
   * @param factor factor for the widths
   * @param change factor − 1
   * @param advice "as-drafted", "scale", "other-cloth" or "not-narrower"
   */
  public record WidthNote(
      String layer,
      double factor,
      @JsonView(Answer.Full.class) double plusMinus,
      @JsonView(Answer.Full.class) double change,
      String advice,
      String says) {}

  /** The layers worn as one in a direction: the one that stretches least limits the others. */
  public record TogetherNote(
      String direction,
      String limiting,
      @JsonView(Answer.Full.class) double stretch,
      @JsonView(Answer.Full.class) double plusMinus,
      String says) {}

  /**
   * The band elastic.
   *
   * @param testedExtension its extension under the weight, a fraction
   * @param tensionNPerCm its tension under the weight, N per cm of width
   * @param limit the greatest extension to wear, half its stretch
   * @param worn as cut; null if the cut length or the underbust was not given
   * @param advised as cut for the target pressure; null without an underbust
   */
  public record ElasticNote(
      @JsonView(Answer.Full.class) double testedExtension,
      @JsonView(Answer.Full.class) double tensionNPerCm,
      @JsonView(Answer.Full.class) double tensionPlusMinus,
      double limit,
      WornNote worn,
      CutNote advised) {}

  /**
   * An elastic in wear.
   *
   * @param window "below", "comfortable", "firm" or "complaint"
   * @param beyondLimit whether it is stretched beyond half of its known maximum
   * @param sidesKPa approximate pressure at the sides, where a trunk curves most
   * @param frontKPa approximate pressure at front and back
   */
  public record WornNote(
      @JsonView(Answer.Full.class) double extension,
      boolean beyondLimit,
      @JsonView(Answer.Full.class) double tensionNPerCm,
      double kPa,
      @JsonView(Answer.Full.class) double plusMinusKPa,
      @JsonView(Answer.Full.class) double mmHg,
      @JsonView(Answer.Full.class) double sidesKPa,
      @JsonView(Answer.Full.class) double frontKPa,
      String window,
      String says) {}

  /**
   * A length to cut.
   *
   * @param mm including joining
   * @param suits "suits", "too-soft", "too-firm" or "end-stop-unread" for the target pressure
   */
  public record CutNote(
      @JsonView(Answer.Full.class) double mm,
      String text,
      @JsonView(Answer.Full.class) double plusMinusMm,
      String plusMinus,
      @JsonView(Answer.Full.class) double targetKPa,
      WornNote worn,
      String suits,
      String says) {}

  /** How to test at home. */
  public record ProtocolNote(List<String> cloth, List<String> elastic) {}
}
