package easewright.measure;

/**
 * A number that rules may judge: one measurement less another, in millimetres, or over another less
 * 1, a fraction. One of less and over is set.
 *
 * @param id its name in rules, with hyphens
 * @param of the measurement, "body/" or "garment/" and its name in requests
 * @param less what is taken off it
 * @param over what it is set beside
 * @param says its working, a sentence with the blanks {of}, {other} and {value}
 */
public record FigureFormula(String id, String of, String less, String over, String says) {

  /** Its canonical unit. */
  public String unit() {
    return less == null ? "fraction" : "mm";
  }

  /** The other measurement. */
  public String other() {
    return less == null ? over : less;
  }
}
