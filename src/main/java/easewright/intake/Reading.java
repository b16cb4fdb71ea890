package easewright.intake;

import easewright.number.AmountRead;
import easewright.number.TextSpan;
import java.util.List;
import java.util.Map;

/**
 * What a text was understood to say. Quantities are text with their unit, as a request writes them.
 *
 * @param fitQuestion whether it is about the fit, cloth, size or making of such a garment at all
 * @param signs signs said to be so or not so
 * @param times when some of them show
 * @param fine areas said to be well
 * @param lengths what was measured on the body or the toile
 * @param cloths stretch tests of cloth
 * @param sizeCut the size that was cut; null when not said
 * @param circumstances what else bears on comfort and safety
 * @param earlier changes made before, in the order told
 * @param told what else is told of the toile and of what was tried
 * @param suspected causes the writer suspects or asks about
 * @param couldNotTell a sign that was asked about and could not be told; empty or one
 * @param notUnderstood stretches that speak of the garment but were not read as anything
 * @param readYourself stretches that may tell of a danger to health and were not read as one
 */
public record Reading(
    boolean fitQuestion,
    List<SignRead> signs,
    List<TimeRead> times,
    List<TextRead> fine,
    List<LengthRead> lengths,
    List<ClothRead> cloths,
    TextRead sizeCut,
    List<TextRead> circumstances,
    TextRead monthsSinceOperation,
    List<ChangeRead> earlier,
    Told told,
    List<TextRead> suspected,
    List<TextRead> couldNotTell,
    List<NotUnderstood> notUnderstood,
    List<ReadYourself> readYourself) {

  /** A text that is about something else, with what bears on safety all the same. */
  static Reading ofSomethingElse(List<TextRead> circumstances, List<ReadYourself> readYourself) {
    return new Reading(
        false,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        circumstances,
        null,
        List.of(),
        Told.NOTHING,
        List.of(),
        List.of(),
        List.of(),
        readYourself);
  }

  /**
   * A stretch that only a person can judge.
   *
   * @param why what its words speak of, in words of the rule book
   */
  public record ReadYourself(TextSpan span, String why) {}

  /**
   * A stretch not understood.
   *
   * @param perhaps signs whose phrases it is most like, likeliest first
   * @param unplaced whether it says what is seen and not where; the signs then differ in the place
   */
  public record NotUnderstood(TextSpan span, List<String> perhaps, boolean unplaced) {

    /** A passage that names its place, or nothing that could have one. */
    NotUnderstood(TextSpan span, List<String> perhaps) {
      this(span, perhaps, false);
    }
  }

  /**
   * A sign.
   *
   * @param present true when said to be so, false when denied
   * @param place one of the sign's places, or null
   * @param side "left", "right" or "both", or null
   * @param degree "slight" or "strong", or null
   * @param amount how much, or null
   * @param because the phrase of the rule book it was known by; the sign's name where only a model
   *     read it
   * @param confidence from 0 to 1
   */
  public record SignRead(
      String id,
      boolean present,
      String place,
      String side,
      String degree,
      AmountRead amount,
      String because,
      TextSpan span,
      double confidence) {

    /**
     * The same with what its sentence tells; the sentence may name the place and the degree of
     * another sign, so these stay as they are.
     */
    SignRead with(String otherSide, AmountRead otherAmount) {
      return new SignRead(
          id, present, place, otherSide, degree, otherAmount, because, span, confidence);
    }

    /** The same, known by other words and as surely as these tell. */
    SignRead readAs(String otherBecause, TextSpan otherSpan, double otherConfidence) {
      return new SignRead(
          id, present, place, side, degree, amount, otherBecause, otherSpan, otherConfidence);
    }

    /** Whether it says that this sign is there. */
    boolean isSo(String sign) {
      return present && id.equals(sign);
    }

    /** The same of another sign. */
    SignRead as(String sign) {
      return new SignRead(sign, present, place, side, degree, amount, because, span, confidence);
    }

    /** The same with no length. */
    SignRead withoutAmount() {
      return new SignRead(id, present, place, side, degree, null, because, span, confidence);
    }
  }

  /**
   * When a sign shows.
   *
   * @param sign its id
   * @param time a word of the contract, such as "after-an-hour"
   */
  public record TimeRead(String sign, String time, TextSpan span, double confidence) {}

  /**
   * A measured length.
   *
   * @param of "body", "garment" or "design/drafted"
   * @param name its wire name
   * @param held how the tape was held: field of a measuring to its word; empty when not said
   * @param unitAssumed whether no unit was written and the size of the number told it
   */
  public record LengthRead(
      String of,
      String name,
      String text,
      Map<String, String> held,
      boolean unitAssumed,
      TextSpan span,
      double confidence) {}

  /**
   * A stretch test.
   *
   * @param role "main", "lining" or "support"
   * @param direction "around" or "along"
   * @param lengths "marked", "stretched" and, when told, "relaxed"
   */
  public record ClothRead(
      String role,
      String direction,
      Map<String, String> lengths,
      TextSpan span,
      double confidence) {}

  /** A name or number and the words it comes from. */
  public record TextRead(String value, TextSpan span, double confidence) {}

  /**
   * A change made.
   *
   * @param amount by how much, or null
   * @param outcome "better", "same" or "worse", or null
   * @param better signs that got better by it
   * @param worse signs that got worse by it
   */
  public record ChangeRead(
      String adjustment,
      AmountRead amount,
      String outcome,
      List<String> better,
      List<String> worse,
      TextSpan span,
      double confidence) {}
}
