package easewright.rulebook.facts;

/**
 * A derived number about a fitting.
 *
 * @param id kebab-case name, e.g. "band-length-excess"
 * @param value in canonical units: mm, fraction, kPa, N/cm, ml, count or months
 * @param sd one standard deviation of its error in the same unit; 0 when exact
 * @param unit canonical unit as text: "mm", "fraction", "kPa", "N/cm", "ml", "count", "months"
 * @param formula the formula in words with the numbers put in
 */
public record Figure(String id, double value, double sd, String unit, String formula) {
  public Figure {
    if (!Double.isFinite(value) || !(sd >= 0)) {
      throw new IllegalArgumentException(
          "Figure " + id + " needs a finite value and an error of zero or more.");
    }
  }
}
