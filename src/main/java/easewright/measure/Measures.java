package easewright.measure;

import java.util.List;
import java.util.Map;

/**
 * What tape measurements can be, and what to say of one that can't: {@code practice/measures.yaml}
 * of a rule book. Lengths are written with their unit.
 *
 * @param measurements the range of each, in the order remarks are made
 * @param comparisons how two usually stand to each other
 * @param orders which of two must be the larger
 * @param names what each is called in a sentence, by its wire name
 * @param sentences what is said, by key; blanks in braces
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
   * @param least the least a tape can show there, a length
   * @param most the most, a length
   * @param leastSurveyed the least of a survey, a length; null where none has it
   * @param usual its middle, a length
   */
  public record Range(
      String id, String least, String most, String leastSurveyed, String usual, String source) {}

  /**
   * Two measurements compared.
   *
   * @param as "ratio" or "difference", of the first and the second
   * @param low below it both are doubted: a number for a ratio, a length for a difference
   * @param high above it both are doubted
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
   * Two measurements of which one must be the larger.
   *
   * @param field wire name of the one a remark stands at
   * @param kind "impossible" or "unlikely"
   * @param samePlace no further apart, both are likely of one place; a length, or null
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
