package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.wording.Blanks;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * How a number is worked out.
 *
 * @param wording key of the sentence that tells the working; the blank {value} is the result
 * @param inputs what it needs
 * @param work the result with what stands in the other blanks; called only where every input is
 *     given, and empty where the model has no answer
 * @param toThePlan whether it brings something back to what was planned for it, no further
 */
record Formula(
    String wording,
    List<Input> inputs,
    Function<FittingNumbers, Optional<Worked>> work,
    boolean toThePlan) {

  /** A result, in the unit of what is worked out, and what its sentence shows. */
  record Worked(Estimate result, Blanks blanks) {}

  /** A formula that always has a result. */
  static Formula of(String wording, Function<FittingNumbers, Worked> work, Input... inputs) {
    return new Formula(
        wording, List.of(inputs), numbers -> Optional.of(work.apply(numbers)), false);
  }

  /** A formula that may have no result. */
  static Formula trying(
      String wording, Function<FittingNumbers, Optional<Worked>> work, Input... inputs) {
    return new Formula(wording, List.of(inputs), work, false);
  }

  /** The same, of something brought back to its plan. */
  Formula bringsToThePlan() {
    return new Formula(wording, inputs, work, true);
  }

  /** Whether every input is given. */
  boolean isReady(FittingNumbers numbers) {
    for (Input input : inputs) {
      if (!input.isGiven(numbers)) {
        return false;
      }
    }
    return true;
  }

  /** The result; empty where an input is missing or the model has no answer. */
  Optional<Worked> worked(FittingNumbers numbers) {
    return isReady(numbers) ? work.apply(numbers) : Optional.empty();
  }
}
