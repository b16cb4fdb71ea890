package easewright.measure;

/** What a unit measures, with the base unit that {@link Unit#factor()} converts to. */
public enum Dimension {
  /** Base unit millimetre. */
  LENGTH("a length", "86.5 cm\" or \"34 in"),
  /** Base unit one: 75 % is 0.75. */
  RATIO("a percentage", "75 %"),
  /** Base unit newton. */
  FORCE("a force", "5 N\" or \"500 gf"),
  /** Force along a cut edge; base unit newton per centimetre of band height. */
  LINE_TENSION("a tension per width", "2.4 N/cm"),
  /** Cloth weight; base unit gram per square metre. */
  AREAL_WEIGHT("a cloth weight", "220 g/m²\" or \"6.5 oz/yd²"),
  /** Base unit kilopascal. */
  PRESSURE("a pressure", "2.0 kPa\" or \"15 mmHg");

  private final String phrase;
  private final String examples;

  Dimension(String phrase, String examples) {
    this.phrase = phrase;
    this.examples = examples;
  }

  /** The dimension in words, with its article: "a length". */
  public String phrase() {
    return phrase;
  }

  /** A sentence saying how to write such a quantity. */
  String remedy() {
    return "Write " + phrase + " with its unit: \"" + examples + "\".";
  }
}
