package easewright.intake;

import easewright.english.Mention;
import easewright.english.Stretch;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/** What was seen while a change was held, pinned or basted. */
final class TrialOutcome {
  private static final String RIGHT = "right";
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
  }

  /** By the words after it, else by those before it in its own clause. */
  Seen of(Stretch trial, String part, SaidWhere said, Post post) {
    Stretch after = after(trial, part, post);
    Seen seen = seen(after, said, post);
    int next = after.last() + 1;
    for (int i = 0; i < MOST_SENTENCES; i++) {
      if (seen.outcome() != null || next >= post.words().size() || !tells(next, part, post)) {
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
  private boolean tells(int word, String part, Post post) {
    Stretch sentence = post.sentenceOf(word);
    if (!seenInIt.in(post).from(word, word).isEmpty()) {
      return true;
    }
    boolean names =
        post.mentions().from(sentence.first(), sentence.last()).stream()
            .anyMatch(one -> lexicon.isPart(one.name()));
    boolean opens = post.lists().has("outcome openers", post.words().get(word).plain());
    boolean isShort = sentence.last() - sentence.first() < SHORT;
    return post.breaks().get(word) == Post.Break.STOP
        && (opens && !(names && part.isEmpty()) || isShort && !names);
  }

  /** The rest of the sentence, up to a breath in which another piece is spoken of. */
  private Stretch after(Stretch trial, String part, Post post) {
    int end = Math.min(post.sentenceOf(trial.last()).last(), trial.last() + LONGEST);
    for (int i = trial.last() + 1; i <= end; i++) {
      if (post.breaks().get(i).compareTo(Post.Break.PAUSE) >= 0 && namesAnother(i, part, post)) {
        return new Stretch(trial.last() + 1, i - 1);
      }
    }
    return new Stretch(trial.last() + 1, end);
  }

  private boolean namesAnother(int word, String part, Post post) {
    return post.mentionsInClause(post.clause()[word]).stream()
        .map(Mention::name)
        .anyMatch(name -> lexicon.isPart(name) && !name.equals(part));
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
    if (left || isSaid(SAME, here, post)) {
      return SAME;
    }
    if (isSaid(WORSE, here, post)) {
      return WORSE;
    }
    boolean right =
        this.right.in(post).from(here.first(), here.last()).stream()
            .anyMatch(one -> !isTurned(one, post));
    if (ended || right || isSaid("gone", here, post)) {
      return RIGHT;
    }
    return isSaid(BETTER, here, post) ? BETTER : isSaid("fine", here, post) ? RIGHT : null;
  }

  private static boolean isSaid(String cue, Stretch here, Post post) {
    return post.cues(cue).from(here.first(), here.last()).stream()
        .anyMatch(one -> cue.equals(SAME) || !isTurned(one, post));
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
