package easewright.clinic;

/** What a key lets its holder do. */
public enum Role {
  /** Everything in the clinic: keys, retention, export and deletion. */
  ORGANISER('o'),
  /** Cases: read, take, answer, hand over, close. */
  HELPER('h'),
  /** One case: read it, add to it, delete it. */
  WEARER('w');

  private final char letter;

  Role(char letter) {
    this.letter = letter;
  }

  /** Tells the kind of a key at its beginning. */
  char letter() {
    return letter;
  }
}
