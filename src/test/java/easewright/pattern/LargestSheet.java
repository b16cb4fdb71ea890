package easewright.pattern;

/**
 * The largest sheet that the schema and the limit on combinations allow, with every edge sewn to
 * another.
 */
public final class LargestSheet {

  private static final int PIECES = 32;
  private static final int EDGES = 16;
  private static final int SIDE = 14;

  private LargestSheet() {}

  /** The sheet in YAML; {@code doubled} gives twice as many combinations. */
  public static String yaml(boolean doubled) {
    StringBuilder text =
        new StringBuilder(
            """
            schemaVersion: 1
            id: largest
            name: Largest
            family: robe
            summary: As large as it may be.
            construction: Sixteen pairs of pieces.
            constructionType: compression
            supportClass: low
            seamAllowance: "1 cm"
            cloth: { main: { stretchAround: "50 %", stretchAlong: "30 %", use: "20 %" } }
            trims: []
            sizes:
              grid:
                bands:
            """);
    for (int i = 0; i < SIDE; i++) {
      text.append(
          "      - { label: \"%d\", underbust: { from: \"%d cm\", to: \"%d cm\" } }\n"
              .formatted(i, 60 + i, 61 + i));
    }
    text.append("    cups:\n");
    for (int i = 0; i < SIDE; i++) {
      text.append(
          "      - { label: \"c%d\", difference: { from: \"%d cm\", to: \"%d cm\" } }\n"
              .formatted(i, 5 + i, 6 + i));
    }
    text.append("    measurements:\n");
    for (int i = 0; i < EDGES; i++) {
      text.append(
          "      m%d: { base: \"%d mm\", perBand: \"1 mm\", perCup: \"1 mm\" }\n"
              .formatted(i, 100 + i));
    }
    text.append("choices:\n");
    for (int i = 0; i < 8; i++) {
      text.append("  - { id: c%d, name: C, ask: Which, default: a, options: [".formatted(i));
      // Seven choices of two and one of four give 512 combinations.
      int options = i < 7 ? 2 : doubled ? 8 : 4;
      for (int k = 0; k < options; k++) {
        text.append(
            "{ id: %s, name: O, changes: { m%d: \"%d mm\" } }, ".formatted((char) ('a' + k), i, k));
      }
      text.setLength(text.length() - 2);
      text.append("] }\n");
    }
    text.append("pieces:\n");
    for (int i = 0; i < PIECES; i++) {
      String role = i == 0 ? "front" : i == 1 ? "back" : "other";
      text.append(
          "  - { id: p%d, name: P, role: %s, layer: main, box: %s, edges: ["
              .formatted(
                  i, role, "{ around: { base: \"1000 mm\" }, along: { base: \"1000 mm\" } }"));
      for (int k = 0; k < EDGES; k++) {
        text.append(
            "{ id: e%d, length: m%d, sewnTo: [p%d/e%d], notches: 1 }, ".formatted(k, k, i ^ 1, k));
      }
      text.setLength(text.length() - 2);
      text.append("] }\n");
    }
    return text.toString();
  }
}
