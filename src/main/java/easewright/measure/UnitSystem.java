package easewright.measure;

/** The family of units a quantity was written in; an answer uses the asker's. */
public enum UnitSystem {
  /** Centimetres, newtons, grams; also units of neither family, such as the percent. */
  METRIC,
  /** Inches, pounds-force, ounces. */
  IMPERIAL
}
