package easewright.rulebook;

import java.util.List;
import java.util.Map;

/**
 * Which of two sizes to take where the measurements lie between them, and when to take none: {@code
 * practice/sizing.yaml}.
 *
 * @param between the first whose situation holds is followed
 * @param measureAgain ids of signs of a slip of the tape, with which no size is named to cut
 * @param steps the adjustment that another size would be: "up", "down", "sister", "larger-sister",
 *     "larger-cup", "smaller-cup"
 * @param neighbours what two toiles in neighbouring sizes tell together
 */
public record SizingNotes(
    List<Between> between,
    List<String> measureAgain,
    Map<String, String> steps,
    Neighbours neighbours) {

  /**
   * Of two toiles one step of size apart, the smaller one tight and the larger one loose.
   *
   * @param sign id of the sign that they are together
   * @param tight ids of signs of too little room
   * @param loose ids of signs of too much
   */
  public record Neighbours(String sign, List<String> tight, List<String> loose) {}

  /**
   * What to take in a situation.
   *
   * @param when "room", "compression", "shaped" or "unknown"
   * @param take "larger", "smaller" or "likelier"
   * @param says the sentence of {@code wording.yaml} that says why
   */
  public record Between(String when, String take, String says, String source) {}

  /** What to take in a situation. */
  public Between of(List<String> situations) {
    return between.stream()
        .filter(one -> situations.contains(one.when()))
        .findFirst()
        .orElseThrow(() -> new RuleBookFault("practice/sizing.yaml knows none of " + situations));
  }
}
