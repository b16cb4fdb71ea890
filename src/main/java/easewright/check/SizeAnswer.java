package easewright.check;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonView;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CautionNote;
import easewright.diagnosis.Answer.MeasureAgainNote;
import easewright.diagnosis.Answer.RuleBookStamp;
import easewright.diagnosis.Answer.SidesNote;
import easewright.diagnosis.Answer.SizeChance;
import easewright.diagnosis.Answer.SizeNameNote;
import easewright.diagnosis.Answer.TapeErrorNote;
import easewright.diagnosis.Answer.Understood;
import java.util.List;

/**
 * The size to cut, checked before cutting. Lengths are in millimetres, with a text in the client's
 * units; probabilities are fractions of one.
 *
 * @param ruleBook the rule book used
 * @param understood the combined measurements, with their errors
 * @param cautions safety cautions; dangers come first, the most urgent before the others
 * @param notNow what is left out because of a caution, and why; null if nothing is
 * @param size the probability of each size; null without bust and underbust, or in danger
 * @param take which size to cut and why; null without a size
 * @param mixed two sizes to combine, if no single one fits above and below; otherwise null
 * @param sides the two sides, where the size follows the larger one; otherwise null
 * @param measureAgain measurements that are unlikely or do not agree, and why
 * @param sharpen which measurement, taken with half the error, would make the size most certain,
 *     best first; empty where a girth is to be measured again in any case
 * @param labels labels for these girths in every region
 * @param converted the label to convert; null for none
 */
public record SizeAnswer(
    RuleBookStamp ruleBook,
    Understood understood,
    List<CautionNote> cautions,
    String notNow,
    SizeNote size,
    TakeNote take,
    MixedNote mixed,
    SidesNote sides,
    List<MeasureAgainNote> measureAgain,
    List<SharpenNote> sharpen,
    @JsonView(Answer.Full.class) List<PrintedNote> labels,
    ConvertedNote converted) {

  /** Whether a size is near, and none is named to cut until it has been measured again. */
  @JsonIgnore
  public boolean isToBeMeasuredAgain() {
    return take == null
        && mixed == null
        && size != null
        && size.outside() < 0.5
        && !measureAgain.isEmpty();
  }

  /** An answer that is about a danger and nothing else. */
  static SizeAnswer ofDanger(Answer judged) {
    return new SizeAnswer(
        judged.ruleBook(),
        judged.understood(),
        judged.cautions(),
        judged.notNow(),
        null,
        null,
        null,
        null,
        List.of(),
        List.of(),
        List.of(),
        null);
  }

  /**
   * The probabilities of sizes.
   *
   * @param chart the sheet's id, or the size system's name in words
   * @param recommended the most probable size, or the larger one if room takes precedence; null if
   *     the chart is out of range
   * @param neighbours other sizes worth naming, most probable first; if room takes precedence, none
   *     smaller in band or cup than the one to take
   * @param sisters sizes one band down and one band up with similar cup volume; empty if room takes
   *     precedence
   * @param outside probability that no size of the chart fits both girths
   * @param bandProbability that the recommended band is right, whatever the cup
   * @param cupProbability that the recommended cup is right, whatever the band; null without cups
   * @param between whether the first two sizes are too close to tell apart
   * @param letter why the label for these girths differs from the recommended size; null if it does
   *     not, and with a sheet
   * @param alsoCalled what the sheet calls the recommended size elsewhere
   * @param shared a sentence saying that the measured girths belong equally to several sizes; null
   *     if they do not
   * @param hint which other places may have been measured; null where nothing suggests it
   * @param tapeError the error that these probabilities assume
   */
  public record SizeNote(
      String chart,
      SizeChance recommended,
      List<SizeChance> neighbours,
      @JsonView(Answer.Full.class) List<SizeChance> sisters,
      double outside,
      @JsonView(Answer.Full.class) double bandProbability,
      @JsonView(Answer.Full.class) Double cupProbability,
      boolean between,
      String letter,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) List<SizeNameNote> alsoCalled,
      String shared,
      String hint,
      @JsonView(Answer.Full.class) TapeErrorNote tapeError) {}

  /**
   * The size to cut.
   *
   * @param choice "clear" if it is right more often than not, else "likeliest"; between two sizes
   *     "smaller", "larger" or "first"
   * @param because the reason in a sentence
   * @param never why no smaller size is advised; null if one may be
   */
  public record TakeNote(String size, String choice, String because, String never) {}

  /**
   * Two sizes to combine.
   *
   * @param lower the size of the band, by underbust
   * @param upper the size over the bust
   * @param seams the edges to blend along, piece by piece; empty without a sheet
   * @param caution why joining them may not serve; null where they are neighbours
   */
  public record MixedNote(
      String lower, String upper, List<SeamNote> seams, String says, String caution) {}

  /** An edge that runs from the upper size into the lower. */
  public record SeamNote(String piece, String edge) {}

  /**
   * The value of halving one measurement's error.
   *
   * @param now the best size's current probability
   * @param then the best size's expected probability afterwards
   * @param gain the difference
   */
  public record SharpenNote(
      String measurement,
      @JsonView(Answer.Full.class) double plusMinusMm,
      @JsonView(Answer.Full.class) String plusMinus,
      @JsonView(Answer.Full.class) double now,
      @JsonView(Answer.Full.class) double then,
      @JsonView(Answer.Full.class) double gain,
      boolean worthwhile,
      String says) {}

  /** A label, the region that prints it, and how number and letter are counted there. */
  public record PrintedNote(String region, String basis, String label, String says) {}

  /**
   * A label and its possible meanings.
   *
   * @param onSheet the sizes of the pattern that are called this
   * @param readings each way to read it
   * @param ambiguities every reason why it may mean more than one thing
   */
  public record ConvertedNote(
      String label,
      String printedIn,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> onSheet,
      List<ReadingNote> readings,
      List<String> ambiguities) {}

  /**
   * One way to read a label.
   *
   * @param underbust its underbust girths
   * @param bust its bust girths, null for a band alone
   * @param probability that the measured girths match; null if not measured
   * @param others labels for the middle of these girths in every region
   */
  public record ReadingNote(
      String region,
      String basis,
      String says,
      SpanNote underbust,
      SpanNote bust,
      Double probability,
      @JsonView(Answer.Full.class) List<PrintedNote> others) {}

  /** A range of girths. */
  public record SpanNote(
      @JsonView(Answer.Full.class) double fromMm,
      @JsonView(Answer.Full.class) double toMm,
      String text) {}
}
