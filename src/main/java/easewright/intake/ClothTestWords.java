package easewright.intake;

import easewright.number.ReadingBounds;
import easewright.number.WordLists;
import java.util.regex.Pattern;

/** How stretch tests are told of, in the words that the rule book has for them. */
final class ClothTestWords {
  /** Between the marked and the stretched length. */
  final Pattern to;

  /** Near both: cloth, pulling or marks are spoken of. */
  final Pattern talk;

  /** Between the stretched and the relaxed length. */
  final Pattern relaxed;

  /** That all of it came back, without a number. */
  final Pattern allBack;

  /** What was pulled is no cloth. */
  final Pattern notCloth;

  final Pattern along;
  final Pattern lining;
  final Pattern support;

  /** How far a cloth stretches and comes back; beyond, two amounts are no test. */
  final double leastStretch;

  final double mostStretch;
  final double mostShrinking;

  ClothTestWords(WordLists lists, ReadingBounds bounds) {
    this.leastStretch = bounds.of("least-stretch-read");
    this.mostStretch = bounds.of("greatest-stretch-read");
    this.mostShrinking = bounds.of("below-the-mark");
    this.to =
        Pattern.compile(
            "(?is)[^.!?]{0,90}\\b"
                + lists.oneOf("stretches to")
                + "\\b[^.!?]{0,40}|[^.!?]{0,40}(?:→|->|=>|=)[^.!?]{0,40}");
    this.talk = anywhere(lists, "talk of a cloth test");
    this.relaxed = Pattern.compile("(?is)[^!?]{0,90}\\b" + lists.oneOf("let go") + "\\b.*");
    this.allBack =
        Pattern.compile("(?is)[^0-9.!?]{0,40}\\b" + lists.oneOf("all the way back") + ".*");
    this.notCloth = anywhere(lists, "no cloth");
    this.along = anywhere(lists, "lengthwise");
    this.lining = anywhere(lists, "the lining");
    this.support = anywhere(lists, "the support layer");
  }

  private static Pattern anywhere(WordLists lists, String list) {
    return Pattern.compile("(?is).*\\b" + lists.oneOf(list) + "\\b.*");
  }
}
