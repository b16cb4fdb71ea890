package easewright.rulebook;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;

/**
 * A number the rules use.
 *
 * @param id kebab-case name
 * @param text as written, e.g. "3 %" or "12 mm"
 * @param unit unit of a bare number, e.g. "count"; null when the text has its unit
 * @param what it is for
 * @param since month it was set
 * @param source publication, "common practice" or "from memory"
 * @param number the value in canonical units: fractions, millimetres, and as written otherwise
 */
public record Parameter(
    String id,
    @JsonProperty("value") String text,
    String unit,
    @JsonProperty("for") String what,
    String since,
    String source,
    @JsonIgnore double number) {

  /**
   * A parameter as written.
   *
   * @throws RuleBookFault if the text is not a number with its unit
   */
  @JsonCreator
  static Parameter of(
      @JsonProperty("id") String id,
      @JsonProperty("value") String text,
      @JsonProperty("unit") String unit,
      @JsonProperty("for") String what,
      @JsonProperty("since") String since,
      @JsonProperty("source") String source) {
    return new Parameter(id, text, unit, what, since, source, canonical(id, text, unit));
  }

  private static double canonical(String id, String text, String unit) {
    String[] parts = text.strip().split(" ", 2);
    double number;
    try {
      number = Double.parseDouble(parts[0]);
    } catch (NumberFormatException e) {
      throw new RuleBookFault(
          "Parameter " + id + ": \"" + text + "\" is not a number with a unit.");
    }
    String in = parts.length == 2 ? parts[1].strip() : unit;
    if (in == null) {
      throw new RuleBookFault("Parameter " + id + " has no unit: write \"3 %\" or unit: count.");
    }
    return switch (in) {
      case "%" -> number / 100;
      case "cm" -> number * 10;
      case "in" -> number * 25.4;
      default -> number;
    };
  }
}
