package easewright.intake;

import easewright.intake.Reading.TextRead;
import easewright.number.TextSpan;
import easewright.reading.QuestionsSaid.QuestionSaid;
import easewright.reading.SentenceSaid;
import easewright.reading.TrainedReading;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the writer asks, as the words and a trained model read it together. In a sentence of which
 * the model is sure, it decides; what only the words read stays where the model finds it possible.
 */
final class QuestionsByModel {
  /** From here on the model is sure that something is asked. */
  private static final double SURE = 0.35;

  /** Below this it does not see what the words read. */
  private static final double UNSEEN = 0.05;

  /** As many questions of one sentence are answered. */
  private static final int MOST_OF_SENTENCE = 2;

  private static final String CHANGE = "change";
  private static final String SIZE = "size";
  private static final String OTHER = "other";

  /** "Which size?" is about no direction. */
  private static final String WHICH = "which";

  /** Kinds of the words that are parts of one kind of the model's. */
  private static final Set<String> OF_NORMAL = Set.of("need", "must", "too");

  private static final String NORMAL = "normal";

  /** Kinds of the model that say what the words leave open. */
  private static final Map<String, Set<String>> CLOSER =
      Map.of("act", Set.of("act", CHANGE, "size"), "do", Set.of("do", "how"));

  /**
   * What is asked.
   *
   * @param changes adjustments the writer asks whether to make
   * @param questions what else, in the order asked
   */
  record Asked(List<TextRead> changes, List<QuestionRead> questions) {}

  private final Set<String> adjustments;

  /**
   * @param adjustments ids of all changes that may be asked about
   */
  QuestionsByModel(Set<String> adjustments) {
    this.adjustments = Set.copyOf(adjustments);
  }

  /** The words' reading joined with the model's; where there is none, unchanged. */
  Asked joined(Asked words, Optional<TrainedReading> model) {
    boolean read =
        model.isPresent()
            && model.get().sentences().stream().anyMatch(one -> one.questions().areRead());
    return read ? joined(words, model.get()) : words;
  }

  private Asked joined(Asked words, TrainedReading model) {
    List<TextRead> changes = new ArrayList<>(words.changes());
    List<QuestionRead> questions = new ArrayList<>(words.questions());
    for (SentenceSaid sentence : model.sentences()) {
      TextSpan span = new TextSpan(sentence.from(), sentence.to());
      List<QuestionSaid> sure =
          sentence.questions().asked(SURE).stream().limit(MOST_OF_SENTENCE).toList();
      List<QuestionSaid> possible = sentence.questions().asked(UNSEEN);
      questions.removeIf(
          one ->
              span.touches(one.span())
                  && (one.kind().equals(OTHER)
                      ? !sure.isEmpty()
                      : possible.stream().noneMatch(other -> isSame(other, one))));
      for (QuestionSaid one : sure) {
        if (one.kind().equals(CHANGE)) {
          addChange(one, span, changes);
        } else if (questions.stream()
            .noneMatch(known -> span.touches(known.span()) && isSame(one, known))) {
          String about = WHICH.equals(one.about()) ? null : one.about();
          questions.add(new QuestionRead(one.kind(), about, span));
        }
      }
    }
    questions.sort(Comparator.comparingInt(one -> one.span().from()));
    return new Asked(List.copyOf(changes), List.copyOf(questions));
  }

  /** Of one sentence, the words' change counts: they know which it names. */
  private void addChange(QuestionSaid one, TextSpan span, List<TextRead> changes) {
    boolean known =
        changes.stream()
            .anyMatch(other -> span.touches(other.span()) || other.value().equals(one.about()));
    if (!known && adjustments.contains(one.about())) {
      changes.add(new TextRead(one.about(), span, one.probability()));
    }
  }

  private static boolean isSame(QuestionSaid model, QuestionRead words) {
    String kind = OF_NORMAL.contains(words.kind()) ? NORMAL : words.kind();
    boolean alike = model.kind().equals(kind);
    boolean about =
        model.about() == null
            || model.about().equals(words.about())
            || words.about() == null && (WHICH.equals(model.about()) || !model.kind().equals(SIZE));
    return alike && about || CLOSER.getOrDefault(kind, Set.of()).contains(model.kind());
  }
}
