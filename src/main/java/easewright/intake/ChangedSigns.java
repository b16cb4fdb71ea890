package easewright.intake;

import easewright.intake.Reading.ChangeRead;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Finds which signs a change that was made brought or took away: "and now the straps dig in". */
final class ChangedSigns {
  /** As many words after a change as may tell what it did. */
  private static final int LONGEST = 24;

  /** So far before a sign "still" tells of it; in words. */
  private static final int FARTHEST_STILL = 4;

  private final Set<String> dangers;

  /**
   * @param dangers signs that are reported for themselves only
   */
  ChangedSigns(Set<String> dangers) {
    this.dangers = dangers;
  }

  /** The change with the signs that it changed and, where only they tell it, its outcome. */
  ChangeRead of(ChangeRead change, SaidWhere said, Post post) {
    int last = Whereabouts.wordAt(post, change.span().to() - 1);
    int to = Math.min(post.sentenceOf(last).last(), last + LONGEST);
    if (to + 1 < post.words().size() && isOpener(to + 1, post)) {
      to = Math.min(post.sentenceOf(to + 1).last(), last + LONGEST);
    }
    int turn = turn(last + 1, to, post);
    Set<String> worse = new LinkedHashSet<>();
    Set<String> better = new LinkedHashSet<>();
    boolean still = false;
    for (Match match : said.from(last + 1, to)) {
      int head = match.head();
      if (dangers.contains(match.saying().of())) {
        continue;
      }
      boolean gone = Polarity.of(match, post) == Polarity.Meant.NOT_SO;
      boolean left = isStill(head, last, post);
      still |= left;
      if (gone && !left) {
        better.add(match.saying().of());
      } else if (!left && turn >= 0 && turn < head) {
        worse.add(match.saying().of());
      }
    }
    better.removeAll(worse);
    String told = change.outcome();
    if (told == null) {
      told = outcome(still, !better.isEmpty(), !worse.isEmpty());
    }
    return new ChangeRead(
        change.adjustment(),
        change.amount(),
        told,
        List.copyOf(better),
        List.copyOf(worse),
        change.span(),
        change.confidence());
  }

  /** What signs alone tell of a change; null where they say one thing and another. */
  private static String outcome(boolean still, boolean better, boolean worse) {
    if (worse) {
      return better ? null : "worse";
    }
    return still ? "same" : better ? "better" : null;
  }

  private static boolean isOpener(int word, Post post) {
    return post.lists().has("from then on", post.words().get(word).plain())
        || post.lists().has("outcome openers", post.words().get(word).plain());
  }

  /** The first word from which on things are as the change left them; -1 if there is none. */
  private static int turn(int from, int to, Post post) {
    for (int i = from; i <= to; i++) {
      String word = post.words().get(i).plain();
      String two = i < to ? word + " " + post.words().get(i + 1).plain() : word;
      if (post.lists().has("from then on", word) || post.lists().has("from then on", two)) {
        return i;
      }
    }
    return -1;
  }

  private static boolean isStill(int head, int change, Post post) {
    for (int i = Math.max(change + 1, head - FARTHEST_STILL); i < head; i++) {
      if (post.lists().has("still so", post.words().get(i).plain())) {
        return true;
      }
    }
    return false;
  }
}
