package easewright.rulebook;

import java.util.List;

/**
 * Which of two sizes to take where the measurements lie between them: {@code practice/sizing.yaml}.
 *
 * @param between the first whose situation holds is followed
 */
public record SizingNotes(List<Between> between) {

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
