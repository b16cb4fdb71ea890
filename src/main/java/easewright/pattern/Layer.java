package easewright.pattern;

/** Which of the cloths worn together a piece is cut from. */
public enum Layer {
  /** The outer cloth, whose seams make the girth. */
  MAIN,
  /** The cloth against the skin. */
  LINING,
  /** A firm layer between them. */
  SUPPORT
}
