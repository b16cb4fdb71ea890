package easewright.english;

/** What stands before a word, the weakest first. */
public enum Break {
  NONE,
  /** "and", "so", "because": the same breath, another thing said. */
  JOIN,
  /** A comma, a bracket, a dash. */
  PAUSE,
  /** "but", "although": what was denied before is not denied after. */
  TURN,
  /** The end of a sentence. */
  STOP
}
