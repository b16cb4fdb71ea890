package easewright.measure;

/**
 * A quantity cannot be parsed. Carries two sentences: what is wrong and how to fix it. They repeat
 * at most a dozen harmless characters of the text, so they are safe to show on a page.
 */
public final class BadQuantity extends RuntimeException {
  private static final int ECHO = 12;

  private final String problem;
  private final String remedy;

  BadQuantity(String problem, String remedy) {
    // Frequent and expected, since it is caused by user input: no stack trace.
    super(problem + " " + remedy, null, false, false);
    this.problem = problem;
    this.remedy = remedy;
  }

  /** One sentence: what is wrong. */
  public String problem() {
    return problem;
  }

  /** One sentence: how to fix it. */
  public String remedy() {
    return remedy;
  }

  /**
   * The start of the text, with everything except letters, digits and simple punctuation replaced
   * by dots.
   */
  static String excerpt(String text) {
    StringBuilder out = new StringBuilder();
    String trimmed = text.strip();
    for (int i = 0; i < Math.min(ECHO, trimmed.length()); i++) {
      char c = trimmed.charAt(i);
      boolean harmless =
          c >= 'a' && c <= 'z'
              || c >= 'A' && c <= 'Z'
              || c >= '0' && c <= '9'
              || " .,/%-²".indexOf(c) >= 0;
      out.append(harmless ? c : '·');
    }
    return trimmed.length() > ECHO ? out + "…" : out.toString();
  }
}
