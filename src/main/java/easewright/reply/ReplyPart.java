package easewright.reply;

/**
 * Optional parts of a reply, in the order in which they are dropped when it is too long. Always
 * kept: the most serious caution, what to do in danger, the most likely cause, the change and its
 * amount.
 */
public enum ReplyPart {
  /** What would do instead of the change, and what waits for another toile. */
  OTHER_CHANGES,
  /** What the most likely cause means. */
  MEANING,
  /** Which photo would do instead of an answer. */
  PHOTO,
  /** Other possible causes after the first. */
  MORE_CAUSES,
  /** The next size, and how the size cut compares. */
  NEXT_SIZE,
  /** What each reply to the question would change. */
  SHIFT,
  /** How to find the answer to the question. */
  HOW,
  /** Other possible causes. */
  OTHER_CAUSES,
  /** The size to cut. */
  SIZE,
  /** What to report next. */
  QUESTION,
  /** What to measure again. */
  MEASURE_AGAIN,
  /** Earlier changes that did not help. */
  TRIED,
  /** Where on the pattern the change is made. */
  PLACE,
  /** What to measure before changing. */
  MEASURE_FIRST,
  /** Cautions after the most serious one, in full; otherwise only their names. */
  WHOLE_CAUTIONS,
  /** How to check the change. */
  CHECK,
  /** What the wearer asked. */
  ASKED,
  /** That an amount is only a first step. */
  FIRST_STEP,
  /** That nothing is made tighter, in addition to the caution that says so. */
  NOT_NOW,
  /** What to do after the danger is dealt with. */
  AFTER,
  /** The names of cautions after the most serious one; otherwise their number. */
  NAMED_CAUTIONS,
  /** What the most serious danger may mean; what to do and whom to ask is always kept. */
  REASON
}
