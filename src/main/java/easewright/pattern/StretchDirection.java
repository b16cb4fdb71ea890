package easewright.pattern;

/** How a piece is laid: where the cloth's greatest stretch runs. */
public enum StretchDirection {
  /** Around the body. */
  AROUND,
  /** Up and down the body. */
  ALONG
}
