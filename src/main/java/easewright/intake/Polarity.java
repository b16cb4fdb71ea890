package easewright.intake;

import easewright.english.Break;
import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import java.util.LinkedHashSet;
import java.util.Set;

/** Whether something said is meant as so, as not so, or as neither. */
final class Polarity {
  private static final int NEXT_TO = 3;
  private static final int NEXT_NO = 2;
  private static final int FARTHEST_GONE = 5;
  private static final int FARTHEST_THOUGHT = 9;

  /** How something is meant. */
  enum Meant {
    SO,
    NOT_SO,
    /** Asked about, feared, remembered or said of another garment. */
    NEITHER
  }

  private Polarity() {}

  /** How a phrase found is meant. */
  static Meant of(Match match, Post post) {
    boolean no = isDenied(match, post);
    boolean gone = isGone(match, post);
    if (gone) {
      return Meant.NOT_SO;
    }
    if (isElsewhere(match, post) || isPast(match, post) || !no && isOnlyThought(match, post)) {
      return Meant.NEITHER;
    }
    if (match.saying().denies()) {
      return no ? Meant.SO : Meant.NEITHER; // "I put it on" says nothing against "can't get it on"
    }
    return no ? Meant.NOT_SO : Meant.SO;
  }

  /** Whether a "no" reaches what is said. */
  static boolean isDenied(Match match, Post post) {
    if (isDeniedEach(match, post)) {
      return true; // "no marks and no rash" is no double denial
    }
    Set<Mention> reaching = new LinkedHashSet<>();
    if (match.what().isEmpty()) {
      reaching.addAll(post.denials().reaching(match.head()));
    }
    match.what().forEach(one -> reaching.addAll(post.denials().reaching(one.first())));
    long noes =
        reaching.stream()
            .filter(no -> match.said().stream().noneMatch(one -> one.covers(no.first())))
            .count();
    return noes % 2 == 1;
  }

  /** Whether every word of what is said has a "no" of its own. */
  private static boolean isDeniedEach(Match match, Post post) {
    return match.what().size() > 1
        && match.what().stream()
            .allMatch(
                one ->
                    post.denials().reaching(one.first()).stream()
                        .anyMatch(
                            no ->
                                one.first() - no.last() <= NEXT_NO && post.denials().isOfNoun(no)));
  }

  /** Whether what is said at a word is denied by this "no", and not by a nearer one of its kind. */
  static boolean reaches(Mention no, int head, Post post) {
    return post.denials().reaching(head).contains(no);
  }

  /** "Used to ride up", "the gaping is gone". */
  private static boolean isGone(Match match, Post post) {
    Stretch clause = post.clauseOf(match.head());
    Mentions gone = post.cues("gone");
    int from = match.head() + 1;
    int to = Math.min(clause.last(), match.last() + FARTHEST_GONE);
    for (Mention cue : gone.from(from, to)) {
      if (!match.saying().phrase().contains(first(cue, post)) && tellsOfTheEnd(cue, match, post)) {
        return true;
      }
    }
    for (Mention cue : gone.from(clause.first(), match.head() - 1)) {
      if (first(cue, post).equals("used") && tellsOfTheEnd(cue, match, post)) {
        return true;
      }
    }
    return false;
  }

  private static String first(Mention cue, Post post) {
    return post.words().get(cue.first()).plain();
  }

  /** Not of the phrase itself, not denied, and nothing going on: "it has gone all wavy". */
  private static boolean tellsOfTheEnd(Mention cue, Match match, Post post) {
    boolean goesOn =
        post.words().get(cue.last()).plain().equals("gone") && !endsThere(cue.last(), post);
    return !goesOn
        && match.said().stream().noneMatch(one -> one.covers(cue.first()))
        && post.denials().reaching(cue.first()).isEmpty();
  }

  private static boolean endsThere(int word, Post post) {
    int next = word + 1;
    return next >= post.words().size()
        || post.breaks().get(next) != Break.NONE
        || post.lists().has("after gone", post.words().get(next).plain());
  }

  private static boolean isElsewhere(Match match, Post post) {
    return post.cueInClause("elsewhere", match.head())
        || isOfOtherThing(match, post)
        || saysThatOne(match, post)
        || reachesOver("elsewhere", match.head(), Break.PAUSE, post);
  }

  /**
   * Whether the last cue of this name before a word stands in its sentence with no break stronger
   * than this between; where the last does not reach, none before it does.
   */
  private static boolean reachesOver(String cue, int head, Break most, Post post) {
    Mention last = post.cues(cue).lastBefore(head);
    return last != null
        && post.sentence()[last.first()] == post.sentence()[head]
        && post.strongest(last.first(), head).compareTo(most) <= 0;
  }

  /** "The waistband rides up": the thing named just before. */
  private static boolean isOfOtherThing(Match match, Post post) {
    int head = match.head();
    return post.cues("other thing").around(head - NEXT_TO, head + NEXT_TO).stream()
        .anyMatch(
            cue ->
                post.clause()[cue.first()] == post.clause()[head]
                    && Math.abs(head - cue.last()) <= NEXT_TO);
  }

  /** "I bought the same one for years. That one rode up": still the bought one. */
  private static boolean saysThatOne(Match match, Post post) {
    int first = post.sentenceOf(match.head()).first();
    return first > 0
        && post.lists().has("pointing back", post.words().get(first).plain())
        && post.cueInSentence("elsewhere", first - 1);
  }

  private static boolean isPast(Match match, Post post) {
    int head = match.head();
    return reachesOver("past", head, Break.PAUSE, post)
        && post.cues("now").from(post.sentenceOf(head).first(), head).isEmpty();
  }

  private static boolean isOnlyThought(Match match, Post post) {
    int head = match.head();
    return post.cues("might").around(head - FARTHEST_THOUGHT, head - 1).stream()
        .anyMatch(
            cue ->
                post.sentence()[cue.first()] == post.sentence()[head]
                    && head - cue.last() <= FARTHEST_THOUGHT
                    && post.strongest(cue.first(), head).compareTo(Break.JOIN) <= 0);
  }
}
