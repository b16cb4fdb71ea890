package easewright.intake;

import easewright.english.Stretch;
import easewright.reading.SentenceSaid;
import easewright.reading.TrainedReading;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Signs that a text says are there, by their first words, as either reader finds them. */
final class FaultsSaid {
  /** From here on the trained model is sure enough that a sentence tells of a sign. */
  private static final double LIKELY = 0.35;

  /** Below this, what the words found is taken for a mistake. */
  private static final double UNLIKELY = 0.05;

  private final List<Fault> inOrder = new ArrayList<>();

  /**
   * @param plain whether it is told where nothing is tried
   */
  private record Fault(String sign, int word, boolean plain) {}

  /**
   * @param taken words that tell of something tried, not of a fault
   * @param wanted ids of the signs that count
   * @param said phrases of the book found in the text
   * @param model what a trained model read, if any did
   */
  FaultsSaid(
      Set<String> wanted,
      List<Match> said,
      Optional<TrainedReading> model,
      BitSet taken,
      Post post) {
    said.stream()
        .filter(one -> wanted.contains(one.saying().of()))
        .filter(one -> !taken.get(one.head()))
        .filter(one -> Polarity.of(one, post) == Polarity.Meant.SO)
        .filter(one -> model.map(read -> isLikely(one, read, post)).orElse(true))
        .forEach(
            one -> {
              Stretch here = post.sentenceOf(one.head());
              boolean plain = taken.get(here.first(), here.last() + 1).isEmpty();
              inOrder.add(new Fault(one.saying().of(), one.head(), plain));
            });
    for (SentenceSaid one : model.map(TrainedReading::sentences).orElse(List.of())) {
      int first = Whereabouts.wordAt(post, one.from());
      int last = Whereabouts.wordAt(post, one.to() - 1);
      boolean doubtful = !taken.get(first, last + 1).isEmpty();
      wanted.stream()
          .filter(sign -> one.knows(sign) && one.said(sign).reported() >= LIKELY)
          .max(Comparator.comparingDouble(sign -> one.said(sign).reported()))
          .ifPresent(sign -> inOrder.add(new Fault(sign, first, !doubtful)));
    }
    inOrder.sort(Comparator.comparingInt(Fault::word));
  }

  /** Whether the model, where it knows the sign, does not think it most improbable here. */
  private static boolean isLikely(Match match, TrainedReading model, Post post) {
    int at = post.words().get(match.head()).from();
    return model.sentences().stream()
        .filter(one -> one.from() <= at && at < one.to() && one.knows(match.saying().of()))
        .allMatch(one -> one.said(match.saying().of()).reported() >= UNLIKELY);
  }

  /**
   * Those told no farther than so many words before a word, the nearest first. What a sentence
   * tells where something is tried in it comes last, since it may mean the fold that was pinned.
   *
   * @param sentence first word of the sentence that tells of the trial
   * @param way first word that tells of it
   */
  List<String> allBefore(int sentence, int way, int word, int farthest) {
    return inOrder.stream()
        .filter(one -> one.word() <= word && word - one.word() <= farthest)
        .sorted(
            Comparator.comparing(
                    (Fault one) -> !one.plain() || one.word() >= way || one.word() == sentence)
                .thenComparing(Comparator.comparingInt(Fault::word).reversed()))
        .map(Fault::sign)
        .toList();
  }
}
