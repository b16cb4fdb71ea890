package easewright.intake;

import easewright.english.Mention;
import easewright.english.Stretch;
import java.util.List;

/**
 * Whether nursing is told as over: "after feeding two babies, the youngest weaned a year ago". In
 * doubt it goes on, since nothing may press while it does.
 */
final class NursingOver {
  /** As far from its end as may be said who was fed last, in words. */
  private static final int NEAR = 3;

  /** As far after its end as may be said when that was, in words. */
  private static final int FARTHEST_TIME = 6;

  private final NamedPhrases ends;
  private final NamedPhrases last;
  private final NamedPhrases before;
  private final NamedPhrases past;
  private final NamedPhrases after;
  private final NamedPhrases grown;
  private final NamedPhrases behind;
  private final NamedPhrases goesOn;

  NursingOver(Lexicon lexicon) {
    this.ends = NamedPhrases.of("ends of nursing", lexicon);
    this.last = NamedPhrases.of("fed last", lexicon);
    this.before = NamedPhrases.of("fed before", lexicon);
    this.past = NamedPhrases.of("long past", lexicon);
    this.after = NamedPhrases.of("after nursing", lexicon);
    this.grown = NamedPhrases.of("grown since", lexicon);
    this.behind = NamedPhrases.of("nursing is behind", lexicon);
    this.goesOn = NamedPhrases.of("nursing goes on", lexicon);
  }

  /** Whether a post says plainly that it goes on. */
  boolean goesOn(Post post) {
    return !goesOn.in(post).isEmpty();
  }

  /** Whether the sentence of a mention says that it is over. */
  boolean isOver(Mention nursing, Post post) {
    Stretch here = post.sentenceOf(nursing.first());
    if (!within(behind, here, post).isEmpty()) {
      return true;
    }
    boolean isPast = !within(past, here, post).isEmpty() || !within(grown, here, post).isEmpty();
    boolean after =
        within(this.after, here, post).stream()
            .anyMatch(one -> one.last() >= nursing.first() && one.first() <= nursing.last());
    return after && isPast
        || within(ends, here, post).stream().anyMatch(end -> isOfTheLast(end, here, post));
  }

  private boolean isOfTheLast(Mention end, Stretch here, Post post) {
    Stretch beside =
        new Stretch(
            Math.max(here.first(), end.first() - NEAR), Math.min(here.last(), end.last() + NEAR));
    Stretch later = new Stretch(end.last(), Math.min(here.last(), end.last() + FARTHEST_TIME));
    return !within(last, beside, post).isEmpty()
        || within(before, beside, post).isEmpty() && !within(past, later, post).isEmpty();
  }

  private static List<Mention> within(NamedPhrases phrases, Stretch here, Post post) {
    return phrases.in(post).from(here.first(), here.last());
  }
}
