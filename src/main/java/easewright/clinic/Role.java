package easewright.clinic;

/** What the holder of a key may do. */
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

  /** The letter for this role in a key's prefix. */
  char letter() {
    return letter;
  }
}
