package easewright.intake;

import easewright.english.Break;
import easewright.english.Mention;
import easewright.english.Stretch;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Set;

/** What was seen while a change was held, pinned or basted. */
final class TrialOutcome {
  static final String RIGHT = "right";
  private static final String BETTER = "better";
  private static final String SAME = "same";
  private static final String WORSE = "worse";

  /** So far before what is said, "stops" and "still" tell of it; in words. */
  private static final int FARTHEST_VERB = 4;

  /** As many words after a trial as may tell what it did. */
  private static final int LONGEST = 30;

  /** As many sentences after it may tell what it did. */
  private static final int MOST_SENTENCES = 2;

  /** A sentence of no more words than these goes on with what was said. */
  private static final int SHORT = 5;

  private final Lexicon lexicon;
  private final NamedPhrases right;
  private final NamedPhrases seenInIt;
  private final NamedPhrases ways;
  private final NamedPhrases partly;

  /**
   * What was seen.
   *
   * @param outcome null where nothing is said of it
   * @param words that say it
   * @param there signs that are there without the trial
   */
  record Seen(String outcome, BitSet words, List<Match> there) {}

  TrialOutcome(Lexicon lexicon) {
    this.lexicon = lexicon;
    this.right = NamedPhrases.of("right in a trial", lexicon);
    this.seenInIt = NamedPhrases.of("seen in the trial", lexicon);
    this.ways = NamedPhrases.ofPairs("ways of trying", lexicon);
    this.partly = NamedPhrases.of("better in a trial", lexicon);
  }

  /** By the words after it, else by those before it in its own clause. */
  Seen of(Stretch trial, Set<String> parts, SaidWhere said, Post post) {
    Stretch after = after(trial, parts, post);
    Seen seen = seen(after, said, post);
    int next = after.last() + 1;
    for (int i = 0; i < MOST_SENTENCES; i++) {
      if (seen.outcome() != null || next >= post.words().size() || !tells(next, parts, post)) {
        break;
      }
      Stretch more = new Stretch(next, Math.min(post.sentenceOf(next).last(), next + LONGEST));
      Seen later = seen(more, said, post);
      seen = later.outcome() == null ? seen : later;
      next = more.last() + 1;
    }
    if (seen.outcome() != null) {
      return seen;
    }
    Stretch before =
        new Stretch(
            Math.max(post.clauseOf(trial.first()).first(), trial.first() - LONGEST),
            trial.first() - 1);
    Seen earlier = seen(before, said, post);
    return earlier.outcome() == null ? seen : earlier;
  }

  /**
   * The next sentence tells of it: it says so, it begins so, or it is short. Where the piece is not
   * known, it must name none.
   */
  private boolean tells(int word, Set<String> parts, Post post) {
    Stretch sentence = post.sentenceOf(word);
    if (!seenInIt.in(post).from(word, word).isEmpty()) {
      return true;
    }
    if (isAnotherTrial(word, post)) {
      return false;
    }
    boolean names =
        post.mentions().from(sentence.first(), sentence.last()).stream()
            .anyMatch(one -> lexicon.isPart(one.name()));
    boolean opens = post.lists().has("outcome openers", post.words().get(word).plain());
    boolean isShort = sentence.last() - sentence.first() < SHORT;
    return post.breaks().get(word) == Break.STOP
        && (opens && !(names && parts.isEmpty()) || isShort && !names);
  }

  /** The rest of the sentence, up to a breath in which another piece is spoken of. */
  private Stretch after(Stretch trial, Set<String> parts, Post post) {
    int end = Math.min(post.sentenceOf(trial.last()).last(), trial.last() + LONGEST);
    for (int i = trial.last() + 1; i <= end; i++) {
      if (post.breaks().get(i).compareTo(Break.PAUSE) >= 0
          && (namesAnother(i, parts, post) || isAnotherTrial(i, post))) {
        return new Stretch(trial.last() + 1, i - 1);
      }
    }
    return new Stretch(trial.last() + 1, end);
  }

  /** "But pinning 1 cm makes it flat": what was tried next. */
  private boolean isAnotherTrial(int word, Post post) {
    return !ways.in(post).from(word, word + 1).isEmpty()
        && seenInIt.in(post).from(word, word).isEmpty();
  }

  private boolean namesAnother(int word, Set<String> parts, Post post) {
    return post.mentionsInClause(post.clause()[word]).stream()
        .filter(one -> AmountsTold.isPiece(one.name(), lexicon, post))
        .filter(one -> !parts.contains(one.name()))
        .anyMatch(one -> !isWhere(one, post));
  }

  /** "Running to nothing at the sides": where, and no new thing. */
  private static boolean isWhere(Mention piece, Post post) {
    Stretch before = new Stretch(Math.max(0, piece.first() - 2), piece.first() - 1);
    return post.says("before a whereabouts", before);
  }

  private Seen seen(Stretch here, SaidWhere said, Post post) {
    BitSet words = new BitSet();
    if (here.first() > here.last()) {
      return new Seen(null, words, List.of());
    }
    words.set(here.first(), here.last() + 1);
    List<Match> ended = new ArrayList<>();
    List<Match> left = new ArrayList<>();
    for (Match match : said.from(here.first(), here.last())) {
      if (isSaid("still so", match.head(), here, post)) {
        left.add(match);
      } else if (isSaid("ended", match.head(), here, post) || Polarity.isDenied(match, post)) {
        ended.add(match);
      }
    }
    List<Match> there = new ArrayList<>(left);
    there.addAll(ended);
    return new Seen(outcome(here, !ended.isEmpty(), !left.isEmpty(), post), words, there);
  }

  private String outcome(Stretch here, boolean ended, boolean left, Post post) {
    boolean same =
        post.cues(SAME).from(here.first(), here.last()).stream()
            .anyMatch(one -> !isOfASide(one, post));
    if (left || same) {
      return SAME;
    }
    if (isSaid(WORSE, here, post)) {
      return WORSE;
    }
    if (!partly.in(post).from(here.first(), here.last()).isEmpty()) {
      return BETTER;
    }
    if (ended || isRight(here, post) || isSaid("gone", here, post)) {
      return RIGHT;
    }
    return isSaid(BETTER, here, post) ? BETTER : isSaid("fine", here, post) ? RIGHT : null;
  }

  /** "I folded it until it felt good". */
  boolean isRight(Stretch here, Post post) {
    return right.in(post).from(here.first(), here.last()).stream()
        .anyMatch(one -> !isTurned(one, post));
  }

  private static boolean isSaid(String cue, Stretch here, Post post) {
    return post.cues(cue).from(here.first(), here.last()).stream()
        .anyMatch(one -> !isTurned(one, post));
  }

  /** "And the same on the right", "front and back the same" tell of no outcome. */
  private static boolean isOfASide(Mention same, Post post) {
    int next = same.last() + 1;
    boolean after =
        next < post.words().size()
            && post.lists().has("the same of a side", post.words().get(next).plain());
    for (int i = Math.max(0, same.first() - 2); i < same.first(); i++) {
      after |= post.lists().has("sides before the same", post.words().get(i).plain());
    }
    return after;
  }

  /** "Not right yet": a "no" right before it. */
  private static boolean isTurned(Mention one, Post post) {
    return post.cues("no").around(one.first() - FARTHEST_VERB, one.first() - 1).stream()
        .anyMatch(
            no ->
                no.last() < one.first() && post.clause()[no.first()] == post.clause()[one.first()]);
  }

  /** Whether a word of this list stands shortly before another, in the same stretch. */
  private static boolean isSaid(String list, int head, Stretch here, Post post) {
    for (int i = Math.max(here.first(), head - FARTHEST_VERB); i < head; i++) {
      String word = post.words().get(i).plain();
      if (post.lists().has(list, word)
              && !post.lists().has("well after still", post.words().get(i + 1).plain())
          || post.lists().has(list, word + " " + post.words().get(i + 1).plain())) {
        return true;
      }
    }
    return false;
  }
}
