package easewright.measure;

import java.util.List;
import java.util.Map;

/**
 * Limits of tape measurements, and remarks on values outside them: {@code practice/measures.yaml}
 * of a rule book. Lengths are written with their unit.
 *
 * @param measurements the range of each, in the order of remarks
 * @param comparisons usual relations between two measurements
 * @param orders which of two must be larger
 * @param held ways to hold the tape that a measuring may name
 * @param names the name of each in a sentence, by its wire name
 * @param sentences the remarks, by key; blanks in braces
 */
public record Measures(
    List<Range> measurements,
    List<Comparison> comparisons,
    List<Order> orders,
    List<Held> held,
    Map<String, String> names,
    Map<String, String> sentences) {

  /**
   * The range of one measurement.
   *
   * @param id its wire name, such as "bust"
   * @param least minimum a tape can show, a length
   * @param most maximum, a length
   * @param leastSurveyed minimum of a survey, a length; null if no survey has it
   * @param usual typical value, a length
   */
  public record Range(
      String id, String least, String most, String leastSurveyed, String usual, String source) {}

  /**
   * Two measurements compared.
   *
   * @param as "ratio" or "difference", of the first and the second
   * @param low limit below which both are doubted: a number for a ratio, a length for a difference
   * @param high limit above which both are doubted
   */
  public record Comparison(
      String id,
      String first,
      String second,
      String as,
      String low,
      String high,
      String slipWhenLow,
      String slipWhenHigh,
      String source) {}

  /**
   * A way to hold the tape, or what it lay on.
   *
   * @param id what a measuring names, such as "padded-bra"
   * @param field the measuring's field that names it: "over", "tape" or "breath"
   * @param of wire names of the measurements it changes; empty for none
   * @param adds what it adds to a reading on average, a length; null if it adds nothing
   * @param takes what it takes off a reading on average, a length; null if it takes nothing
   * @param varies how far that varies, a length, one standard deviation
   * @param again whether to measure again before a size is cut
   * @param says the way in a sentence, after a measurement
   */
  public record Held(
      String id,
      String field,
      List<String> of,
      String adds,
      String takes,
      String varies,
      boolean again,
      String says,
      String source) {

    /**
     * What it adds to a reading on average, mm; negative if it takes something off.
     *
     * @param measurement wire name; of a side it adds half as much as of a girth
     */
    public double addsMm(String measurement) {
      return share(measurement) * (mm(adds) - mm(takes));
    }

    /** The reading as it would be with the tape held as asked, with the error of that guess. */
    public Measured corrected(String measurement, Measured reading) {
      return new Measured(
          Length.ofMm(Math.max(0, reading.value().mm() - addsMm(measurement))),
          Math.hypot(reading.sdMm(), share(measurement) * mm(varies)),
          reading.writtenIn());
    }

    private static double share(String measurement) {
      return measurement.equals("bustLeft") || measurement.equals("bustRight") ? 0.5 : 1;
    }

    private static double mm(String length) {
      return length == null ? 0 : Length.parse(length).mm();
    }
  }

  /**
   * Two measurements of which one must be larger.
   *
   * @param field wire name of the one a remark refers to
   * @param kind "impossible" or "unlikely"
   * @param samePlace maximum difference at which both were probably taken at the same place; a
   *     length, or null
   * @param samePlaceRemedy what to do then, or null
   */
  public record Order(
      String larger,
      String smaller,
      String field,
      String kind,
      String problem,
      String remedy,
      String samePlace,
      String samePlaceRemedy,
      String source) {}
}
