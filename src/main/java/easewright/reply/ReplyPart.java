package easewright.reply;

/**
 * What a reply can do without, in the order it is left out when there is no room. What is not named
 * here is always said: the gravest caution, what to do in danger, the likeliest cause, the change
 * and its amount.
 */
public enum ReplyPart {
  /** What the likeliest cause means. */
  MEANING,
  /** Which photo would do instead of an answer. */
  PHOTO,
  /** Other causes after the first of them. */
  MORE_CAUSES,
  /** The next size, and how the size cut compares. */
  NEXT_SIZE,
  /** What each reply to the question would change. */
  SHIFT,
  /** How to find out what is asked. */
  HOW,
  /** What else it might be. */
  OTHER_CAUSES,
  /** The size to cut. */
  SIZE,
  /** What to tell next. */
  QUESTION,
  /** What to measure again. */
  MEASURE_AGAIN,
  /** Where on the pattern the change is made. */
  PLACE,
  /** What to measure before changing. */
  MEASURE_FIRST,
  /** Cautions after the gravest in full; else their names. */
  WHOLE_CAUTIONS,
  /** How to check the change. */
  CHECK,
  /** That an amount is only a first step. */
  FIRST_STEP,
  /** That nothing is made tighter, beside the caution that says so. */
  NOT_NOW,
  /** What comes after a danger. */
  AFTER,
  /** The names of cautions after the gravest; else how many there are. */
  NAMED_CAUTIONS,
  /** What the gravest danger may mean; what to do and whom to ask is always said. */
  REASON
}
