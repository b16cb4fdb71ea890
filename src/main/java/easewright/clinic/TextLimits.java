package easewright.clinic;

/** Maximum lengths of user text. Callers validate it, so a longer text is a bug. */
public final class TextLimits {
  /** Maximum length of a name or nickname, characters. */
  public static final int LONGEST_NAME = 80;

  /** Maximum length of a note, reply or post, characters. */
  public static final int LONGEST_TEXT = 4000;

  private TextLimits() {}

  static String name(String name) {
    return within(name, LONGEST_NAME);
  }

  static String text(String text) {
    return within(text, LONGEST_TEXT);
  }

  private static String within(String words, int longest) {
    if (words == null || words.isBlank() || words.length() > longest) {
      throw new IllegalArgumentException("Write 1 to " + longest + " characters.");
    }
    return words;
  }
}
