package easewright.pattern;

/** How a piece is laid: the direction of the cloth's length on the body. */
public enum Grain {
  /** Around the body. */
  AROUND,
  /** Up and down the body. */
  ALONG,
  /** Any direction, for small pieces of even cloth. */
  ANY
}
