package easewright.reply;

/** Answers whether she has to start again. */
final class AgainAsked {
  private AgainAsked() {}

  /**
   * The key of the phrase that answers.
   *
   * @param change the first change, or null
   * @param ofSize whether that change is another size
   */
  static String key(SpokenChange change, Verdict verdict, boolean ofSize) {
    if (verdict == Verdict.SOUND) {
      return "again-no";
    }
    if (change == null || verdict != Verdict.CLEAR) {
      return "again-untold";
    }
    if (change.isMeasuring()) {
      return "again-measure";
    }
    if (ofSize) {
      return "again-size";
    }
    return change.undo().equals("recut") ? "again-recut" : "again-easy";
  }
}
