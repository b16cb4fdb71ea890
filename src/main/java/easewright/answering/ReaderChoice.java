package easewright.answering;

/** What posts are read by. */
public enum ReaderChoice {
  /** The rule book's words alone. */
  WORDS,
  /** The words, joined with the trained reader. */
  BOTH
}
