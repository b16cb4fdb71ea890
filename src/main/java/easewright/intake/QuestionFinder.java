package easewright.intake;

import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.number.TextSpan;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds what the writer asks: "is this normal?", "should I go up a size?". A sentence asks where it
 * ends in a question mark or begins as questions do; within it the rule book's phrases tell the
 * kind.
 */
final class QuestionFinder {
  private static final String OTHER = "other";
  private static final String AMOUNT = "amount";

  /** What may be done, and is asked about only where it stands after "should I" or the like. */
  private static final String ACT = "act ";

  /** "6 or 12": the word between two numbers. */
  private static final String OR = "or";

  /** As many words as may stand between them. */
  private static final int BETWEEN = 2;

  /** A shorter one is a remark: "Right?" */
  private static final int LEAST_WORDS = 4;

  private final NamedPhrases kinds;
  private final NamedPhrases openings;
  private final NamedPhrases changes;
  private final AdviceOfOthers advice;
  private final NamedPhrases facts;

  QuestionFinder(Lexicon lexicon) {
    this.kinds = NamedPhrases.ofPairs("kinds of question", lexicon);
    this.openings = NamedPhrases.of("begins a question", lexicon);
    this.changes = NamedPhrases.of("asks about a change", lexicon);
    this.advice = new AdviceOfOthers(lexicon);
    this.facts = NamedPhrases.of("says how things are", lexicon);
  }

  /** In the order asked, each kind of each thing once. */
  List<QuestionRead> in(Post post) {
    List<QuestionRead> found = new ArrayList<>();
    Mentions said = openings.in(post);
    Mentions askedOf = changes.in(post);
    Mentions advised = advice.open(post);
    Mentions facts = this.facts.in(post);
    List<Mention> phrases = kinds.in(post).stream().toList();
    for (int i = 0; i < phrases.size(); i++) {
      Mention one = phrases.get(i);
      // of two that share a word the later says more: "cut a smaller", "smaller band"
      boolean outdone =
          isWithin(one, phrases, i - 1)
              || i + 1 < phrases.size()
                  && phrases.get(i + 1).first() <= one.last()
                  && phrases.get(i + 1).last() > one.last();
      boolean asks =
          one.name().startsWith(ACT)
              ? stands(post, one, askedOf)
                  || stands(post, one, advised) && !stands(post, one, facts)
              : asks(post, one, said);
      if (!outdone && asks) {
        String[] name = one.name().split(" ");
        // "the band or the straps?" asks about two things
        for (int about = Math.min(1, name.length - 1); about < name.length; about++) {
          add(name[0], about == 0 ? null : name[about], post.span(one.first(), one.last()), found);
        }
      }
    }
    if (found.isEmpty()) {
      other(post, found);
    }
    return List.copyOf(found);
  }

  private static void add(String kind, String about, TextSpan span, List<QuestionRead> found) {
    QuestionRead read = new QuestionRead(kind, about, span);
    if (found.stream().noneMatch(other -> isSame(other, read))) {
      found.add(read);
    }
  }

  /** Whether an earlier phrase holds this one whole. */
  private static boolean isWithin(Mention one, List<Mention> phrases, int before) {
    return before >= 0 && phrases.get(before).last() >= one.last();
  }

  /** Whether one of these stands before the phrase, in its sentence. */
  private static boolean stands(Post post, Mention phrase, Mentions before) {
    return before.from(post.sentenceOf(phrase.first()).first(), phrase.first()).stream()
        .anyMatch(one -> one.last() < phrase.first());
  }

  /** The first question of a kind that no phrase tells. */
  private static void other(Post post, List<QuestionRead> found) {
    for (int first = 0; first < post.words().size() && found.isEmpty(); ) {
      Stretch sentence = post.sentenceOf(first);
      if (sentence.last() - first + 1 >= LEAST_WORDS && isMarked(post, sentence.last())) {
        String kind = asksForNumber(post, first, sentence.last()) ? AMOUNT : OTHER;
        found.add(new QuestionRead(kind, null, post.span(first, sentence.last())));
      }
      first = sentence.last() + 1;
    }
  }

  /** "Is it 6 or 12?" */
  private static boolean asksForNumber(Post post, int first, int last) {
    for (int i = first; i <= last; i++) {
      if (post.words().get(i).plain().equals(OR)
          && hasNumber(post, Math.max(first, i - BETWEEN), i - 1)
          && hasNumber(post, i + 1, Math.min(last, i + 1 + BETWEEN))) {
        return true;
      }
    }
    return false;
  }

  private static boolean hasNumber(Post post, int first, int last) {
    for (int i = first; i <= last; i++) {
      if (Character.isDigit(post.words().get(i).plain().charAt(0))) {
        return true;
      }
    }
    return false;
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
