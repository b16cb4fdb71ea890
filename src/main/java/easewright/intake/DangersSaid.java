package easewright.intake;

import easewright.intake.Bearer.Whose;
import easewright.intake.Reading.ReadYourself;
import easewright.intake.Reading.SignRead;
import easewright.number.TextSpan;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Tells what is said of a person from what is said of a thing, and what only a person can judge.
 */
final class DangersSaid {
  private static final String BREATH = "breathless-or-dizzy";

  private final PhraseFinder so;
  private final Signs signs;
  private final HealthWords health;

  /**
   * @param so finds the signs that a text names
   */
  DangersSaid(PhraseFinder so, Signs signs, HealthWords health) {
    this.so = so;
    this.signs = signs;
    this.health = health;
  }

  /**
   * Whether the model may doubt it: its words are spelled as the model knows them, and no "no" or
   * "only once" turns "easy to breathe" round, which the model reads less surely.
   */
  static boolean mayBeLowered(SignRead danger, Post post) {
    int first = Whereabouts.wordAt(post, danger.span().from());
    int last = Whereabouts.wordAt(post, danger.span().to() - 1);
    return post.isSpelledRight(danger.span())
        && !(danger.id().equals(BREATH)
            && (!post.cues("no").from(first, last).isEmpty()
                || post.says("easy only then", post.sentenceOf(first))));
  }

  /** What was found, by whom or what it is said of; figures of speech left out. */
  Map<Whose, List<Match>> bySubject(Post post, BitSet lookAlikes) {
    Bearer bearer = health.bearer(post);
    return so.in(post).stream()
        .filter(match -> !isLookAlike(match, lookAlikes))
        .collect(
            Collectors.groupingBy(
                match ->
                    signs.isDanger(match.saying().of())
                        ? bearer.of(match.saying().of(), match.first(), match.last(), match.head())
                        : Whose.PERSON));
  }

  /**
   * What only a person can judge.
   *
   * @param doubt what may be meant of a person
   * @param read what the words read
   */
  List<ReadYourself> readYourself(Post whole, Post post, List<Match> doubt, List<SignRead> read) {
    List<ReadYourself> found = health.readYourself(whole, spans(read));
    doubted(doubt, post, read, found);
    found.removeIf(one -> isNamedByADanger(whole.text(), one, read));
    return found;
  }

  /** Words that stand in the phrase a danger was read by are judged with it. */
  private boolean isNamedByADanger(String text, ReadYourself doubt, List<SignRead> read) {
    String words = doubt.span().in(text).toLowerCase(Locale.ROOT);
    return read.stream()
        .anyMatch(
            one -> one.present() && signs.isDanger(one.id()) && one.because().contains(words));
  }

  /** What may be meant of a person and was not read as a danger. */
  private void doubted(
      List<Match> doubted, Post post, List<SignRead> read, List<ReadYourself> readYourself) {
    List<TextSpan> dangers = spans(read);
    for (Match match : doubted) {
      TextSpan span = post.span(match.first(), match.last());
      boolean known =
          dangers.stream().anyMatch(span::touches)
              || readYourself.stream().anyMatch(other -> other.span().touches(span));
      if (!known && !signs.isDenied(match, post)) {
        readYourself.add(new ReadYourself(span, match.saying().phrase()));
      }
    }
  }

  /** A figure of speech tells of no danger: "numb with boredom". */
  private boolean isLookAlike(Match match, BitSet lookAlikes) {
    return signs.isDanger(match.saying().of())
        && match.what().stream().anyMatch(one -> lookAlikes.get(one.first()));
  }

  List<TextSpan> spans(List<SignRead> read) {
    return read.stream()
        .filter(one -> one.present() && signs.isDanger(one.id()))
        .map(SignRead::span)
        .toList();
  }
}
