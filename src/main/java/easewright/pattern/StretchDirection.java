package easewright.pattern;

/** How a piece is laid: the direction of the cloth's greatest stretch. */
public enum StretchDirection {
  /** Around the body. */
  AROUND,
  /** Up and down the body. */
  ALONG
}
