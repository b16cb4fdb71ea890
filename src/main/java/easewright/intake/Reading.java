package easewright.intake;

import java.util.List;
import java.util.Map;

/**
 * What a text was understood to say. Quantities are text with their unit, as a request writes them.
 *
 * @param fitQuestion whether it is about the fit, cloth, size or making of such a garment at all
 * @param signs signs said to be so or not so
 * @param lengths what was measured on the body or the toile
 * @param cloths stretch tests of cloth
 * @param sizeCut the size that was cut; null when not said
 * @param circumstances what else bears on comfort and safety
 * @param earlier changes made before, in the order told
 * @param suspected causes the writer suspects or asks about
 * @param couldNotTell a sign that was asked about and could not be told; empty or one
 * @param notUnderstood stretches that speak of the garment but were not read as anything
 * @param readYourself stretches that may tell of a danger to health and were not read as one
 */
public record Reading(
    boolean fitQuestion,
    List<SignRead> signs,
    List<LengthRead> lengths,
    List<ClothRead> cloths,
    TextRead sizeCut,
    List<TextRead> circumstances,
    TextRead monthsSinceOperation,
    List<ChangeRead> earlier,
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
        null,
        circumstances,
        null,
        List.of(),
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
   */
  public record NotUnderstood(TextSpan span, List<String> perhaps) {}

  /**
   * A sign.
   *
   * @param present true when said to be so, false when denied
   * @param place one of the sign's places, or null
   * @param side "left", "right" or "both", or null
   * @param degree "slight" or "strong", or null
   * @param amount length with its unit, or null
   * @param because the phrase of the rule book it was known by; the sign's name where only the
   *     trained reader read it
   * @param confidence from 0 to 1
   */
  public record SignRead(
      String id,
      boolean present,
      String place,
      String side,
      String degree,
      String amount,
      String because,
      TextSpan span,
      double confidence) {}

  /**
   * A measured length.
   *
   * @param of "body" or "garment"
   * @param name its wire name
   * @param unitAssumed whether no unit was written and the size of the number told it
   */
  public record LengthRead(
      String of, String name, String text, boolean unitAssumed, TextSpan span, double confidence) {}

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
   * @param amount length with its unit, or null
   * @param outcome "better", "same" or "worse", or null
   */
  public record ChangeRead(
      String adjustment, String amount, String outcome, TextSpan span, double confidence) {}
}
