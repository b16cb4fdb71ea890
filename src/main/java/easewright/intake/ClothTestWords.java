package easewright.intake;

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

  ClothTestWords(WordLists lists) {
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
