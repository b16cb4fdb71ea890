package easewright.reply;

/** Answers whether she has to start again. */
final class AgainAsked {
  private AgainAsked() {}

  /**
   * The key of the phrase that answers.
   *
   * @param change the first change, or null
   * @param ofSize whether that change is another size
   * @param next whether that change is for the next garment, not for this one
   * @param proved whether she tried it by hand, and it was right
   * @param quiet whether she names nothing but what she looked for in vain
   */
  static String key(
      SpokenChange change,
      Verdict verdict,
      boolean ofSize,
      boolean next,
      boolean proved,
      boolean quiet) {
    if (verdict == Verdict.SOUND || quiet) {
      return "again-no";
    }
    if (change == null) {
      return "again-untold";
    }
    if (verdict != Verdict.CLEAR && !proved) {
      return "again-likely-not";
    }
    if (change.isMeasuring()) {
      return "again-measure";
    }
    if (ofSize) {
      return "again-size";
    }
    if (next) {
      return "save-next";
    }
    return change.undo().equals("recut") ? "again-recut" : "again-easy";
  }
}
