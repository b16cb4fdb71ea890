package easewright.intake;

import easewright.intake.Reading.ReadYourself;
import easewright.number.TextSpan;
import easewright.reading.ReaderSettings.Joining;
import easewright.reading.Said;
import easewright.reading.TrainedReading;
import easewright.rulebook.Catalog.SignEntry;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * How much the model finds of a danger, or of a sign near one, anywhere in a text.
 *
 * @param catalog signs that it doesn't hold don't count
 */
record DangerTraces(TrainedReading model, Map<String, SignEntry> catalog) {

  /**
   * Takes out what the words leave to a person, where the model finds no trace of a danger in any
   * sentence of the text. What was read from misspelt words stays, since the model may not know
   * them.
   *
   * @return what was taken out
   */
  static List<TextSpan> takeHarmless(
      List<ReadYourself> all,
      Optional<TrainedReading> model,
      Map<String, SignEntry> catalog,
      Post post) {
    if (model.isEmpty() || !new DangerTraces(model.get(), catalog).areNone()) {
      return List.of();
    }
    List<TextSpan> harmless =
        all.stream().map(ReadYourself::span).filter(post::isSpelledRight).toList();
    all.removeIf(one -> harmless.contains(one.span()));
    return harmless;
  }

  private boolean areNone() {
    Joining joining = model.settings().joining();
    return !reach(joining.dangerLowered()) && !reach(joining.calm(), Said::reported);
  }

  /** Whether a danger is reported or doubtful with this probability. */
  boolean reach(double least) {
    return reach(least, DangerTraces::spokenOf);
  }

  private boolean reach(double least, ToDoubleFunction<Said> how) {
    Joining joining = model.settings().joining();
    return model.settings().signs().stream()
        .filter(catalog::containsKey)
        .filter(sign -> catalog.get(sign).redFlag() || joining.nearDangers().contains(sign))
        .anyMatch(sign -> most(sign, model, how) >= least);
  }

  /** The most that any sentence says of a sign, reported or doubtful. */
  static double spokenOf(String sign, TrainedReading model) {
    return most(sign, model, DangerTraces::spokenOf);
  }

  /** How probably a sentence reports a sign or leaves it doubtful. */
  static double spokenOf(Said said) {
    return said.reported() + said.doubtful();
  }

  private static double most(String sign, TrainedReading model, ToDoubleFunction<Said> how) {
    return model
        .most(sign, how)
        .map(one -> how.applyAsDouble(one.said(sign)))
        .orElse(1.0); // not read: nothing is known
  }
}
