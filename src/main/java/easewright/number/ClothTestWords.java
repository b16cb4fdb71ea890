package easewright.number;

import java.util.regex.Pattern;

/**
 * How stretch tests are told of, in the words that the rule book has for them.
 *
 * @param to between the marked and the stretched length
 * @param talk near both: cloth, pulling or marks are spoken of
 * @param relaxed between the stretched and the relaxed length
 * @param allBack that all of it came back, without a number
 * @param notCloth what was pulled is no cloth
 * @param leastStretch how far a cloth stretches; two amounts beyond are no test
 * @param mostShrinking how much shorter than its mark it may come back
 */
public record ClothTestWords(
    Pattern to,
    Pattern talk,
    Pattern relaxed,
    Pattern allBack,
    Pattern notCloth,
    Pattern along,
    Pattern lining,
    Pattern support,
    double leastStretch,
    double mostStretch,
    double mostShrinking) {
  /** Prepares the words. */
  public static ClothTestWords of(WordLists lists, ReadingBounds bounds) {
    return new ClothTestWords(
        Pattern.compile(
            "(?is)[^.!?]{0,90}\\b"
                + lists.oneOf("stretches to")
                + "\\b[^.!?]{0,40}|[^.!?]{0,40}(?:→|->|=>|=)[^.!?]{0,40}"),
        anywhere(lists, "talk of a cloth test"),
        Pattern.compile("(?is)[^!?]{0,90}\\b" + lists.oneOf("let go") + "\\b.*"),
        Pattern.compile("(?is)[^0-9.!?]{0,40}\\b" + lists.oneOf("all the way back") + ".*"),
        anywhere(lists, "no cloth"),
        anywhere(lists, "lengthwise"),
        anywhere(lists, "the lining"),
        anywhere(lists, "the support layer"),
        bounds.of("least-stretch-read"),
        bounds.of("greatest-stretch-read"),
        bounds.of("below-the-mark"));
  }

  private static Pattern anywhere(WordLists lists, String list) {
    return Pattern.compile("(?is).*\\b" + lists.oneOf(list) + "\\b.*");
  }
}
