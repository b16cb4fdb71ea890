package easewright.intake;

import easewright.english.Mentions;

/** Finds advice of others that the writer passes on: "a friend told me to ...". */
final class AdviceOfOthers {
  private final NamedPhrases advised;
  private final NamedPhrases notTheirs;
  private final NamedPhrases followed;

  AdviceOfOthers(Lexicon lexicon) {
    this.advised = NamedPhrases.of("advised by others", lexicon);
    this.notTheirs = NamedPhrases.of("advised by clinicians", lexicon);
    this.followed = NamedPhrases.of("advice that was followed", lexicon);
  }

  /**
   * Advice that may be judged: none where a clinician is mentioned, whose advice stands, and none
   * that was followed already.
   */
  Mentions open(Post post) {
    Mentions all = advised.in(post);
    if (all.isEmpty() || !notTheirs.in(post).isEmpty()) {
      return Mentions.NONE;
    }
    Mentions done = followed.in(post);
    return new Mentions(
        all.stream()
            .filter(
                one -> {
                  int next = post.sentenceOf(one.first()).last() + 1;
                  int last = post.sentenceOf(Math.min(next, post.words().size() - 1)).last();
                  return done.from(one.first(), last).isEmpty();
                })
            .toList());
  }
}
