package easewright.modelreader;

/** How asking the model ended. After all but the first the words read alone. */
public enum ModelOutcome {
  /** It answered in the form asked for. */
  READ,
  /** As many posts as are allowed were being read. */
  BUSY,
  /** It failed several times in a row and is left alone for a while. */
  RESTING,
  /** No whole answer came in time. */
  SLOW,
  /** There was no connection, or it broke. */
  AWAY,
  /** It answered with another status than 200; redirects are not followed. */
  REFUSED,
  /** Its answer was longer than is read. */
  HUGE,
  /** Its answer had another form. */
  GARBLED
}
