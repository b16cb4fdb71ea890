package easewright.reading;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * A text as the model reads it.
 *
 * @param sentences in order
 * @param lengths of the numbers it was asked about, those it was given room for
 * @param settings which signs the model knows, and how its reading is joined with others
 */
public record TrainedReading(
    List<SentenceSaid> sentences, List<LengthSaid> lengths, ReaderSettings settings) {
  /** A text that is asked about no number. */
  public TrainedReading(List<SentenceSaid> sentences, ReaderSettings settings) {
    this(sentences, List.of(), settings);
  }

  /** The same, where these sentences deny nothing: what a trial ended is there without it. */
  public TrainedReading denyingNothingIn(Predicate<SentenceSaid> some) {
    return new TrainedReading(
        sentences.stream().map(one -> some.test(one) ? one.denyingNothing() : one).toList(),
        lengths,
        settings);
  }

  /** Signs that any sentence reports at least so probably. */
  public List<String> reported(double least) {
    return settings.signs().stream()
        .filter(sign -> sentences.stream().anyMatch(one -> one.said(sign).reported() >= least))
        .toList();
  }

  /**
   * The sentence that says something of a sign most probably; none where the text has no sentences
   * or the model does not know the sign.
   *
   * @param what which probability counts
   */
  public Optional<SentenceSaid> most(String sign, ToDoubleFunction<Said> what) {
    return sentences.stream()
        .filter(one -> one.knows(sign))
        .max(Comparator.comparingDouble(one -> what.applyAsDouble(one.said(sign))));
  }
}
