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
 * @param names the name of each in a sentence, by its wire name
 * @param sentences the remarks, by key; blanks in braces
 */
public record Measures(
    List<Range> measurements,
    List<Comparison> comparisons,
    List<Order> orders,
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
