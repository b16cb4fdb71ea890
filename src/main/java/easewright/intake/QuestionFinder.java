package easewright.intake;

import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds what the writer asks: "is this normal?", "should I go up a size?". A sentence asks where it
 * ends in a question mark or begins as questions do; within it the rule book's phrases tell the
 * kind.
 */
final class QuestionFinder {
  private static final String OTHER = "other";

  /** A shorter one is a remark: "Right?" */
  private static final int LEAST_WORDS = 4;

  private final NamedPhrases kinds;
  private final NamedPhrases openings;

  QuestionFinder(Lexicon lexicon) {
    this.kinds = NamedPhrases.ofPairs("kinds of question", lexicon);
    this.openings = NamedPhrases.of("begins a question", lexicon);
  }

  /** In the order asked, each kind of each thing once. */
  List<QuestionRead> in(Post post) {
    List<QuestionRead> found = new ArrayList<>();
    Mentions said = openings.in(post);
    List<Mention> phrases = kinds.in(post).stream().toList();
    for (int i = 0; i < phrases.size(); i++) {
      Mention one = phrases.get(i);
      // of two that share a word the later says more: "cut a smaller", "smaller band"
      boolean outdone = i + 1 < phrases.size() && phrases.get(i + 1).first() <= one.last();
      if (!outdone && asks(post, one, said)) {
        String[] name = one.name().split(" ", 2);
        QuestionRead read =
            new QuestionRead(
                name[0], name.length > 1 ? name[1] : null, post.span(one.first(), one.last()));
        if (found.stream().noneMatch(other -> isSame(other, read))) {
          found.add(read);
        }
      }
    }
    if (found.isEmpty()) {
      other(post, found);
    }
    return List.copyOf(found);
  }

  /** The first question of a kind that no phrase tells. */
  private static void other(Post post, List<QuestionRead> found) {
    for (int first = 0; first < post.words().size() && found.isEmpty(); ) {
      Stretch sentence = post.sentenceOf(first);
      if (sentence.last() - first + 1 >= LEAST_WORDS && isMarked(post, sentence.last())) {
        found.add(new QuestionRead(OTHER, null, post.span(first, sentence.last())));
      }
      first = sentence.last() + 1;
    }
  }

  private static boolean isSame(QuestionRead one, QuestionRead other) {
    return one.kind().equals(other.kind())
        && (one.about() == null ? other.about() == null : one.about().equals(other.about()));
  }

  private static boolean asks(Post post, Mention phrase, Mentions openings) {
    Stretch sentence = post.sentenceOf(phrase.first());
    return isMarked(post, sentence.last())
        || openings.from(sentence.first(), sentence.first() + 1).stream()
            .anyMatch(one -> one.first() <= phrase.first());
  }

  /** Whether a question mark stands between this word and the next. */
  static boolean isMarked(Post post, int last) {
    int from = post.words().get(last).to();
    int to =
        last + 1 < post.words().size() ? post.words().get(last + 1).from() : post.text().length();
    return post.text().substring(from, to).indexOf('?') >= 0;
  }
}
