package easewright.measure;

/** The family of units a quantity was written in; an answer uses the client's. */
public enum UnitSystem {
  /** Centimetres, newtons, grams; also units of neither family, such as percent. */
  METRIC,
  /** Inches, pounds-force, ounces. */
  IMPERIAL
}
