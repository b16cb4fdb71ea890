package easewright.pattern;

/** How a piece is laid: where the length of the cloth runs on the body. */
public enum Grain {
  /** Around the body. */
  AROUND,
  /** Up and down the body. */
  ALONG,
  /** As it lies best, for small pieces of even cloth. */
  ANY
}
