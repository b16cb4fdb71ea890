package easewright.reply;

import java.util.ArrayList;
import java.util.List;

/** What is said to her questions, in that order, and whether it tells the change already. */
final class SpokenAnswers {
  private final SpokenPhrases phrases;
  private final SpokenChange change;
  private final List<String> lines = new ArrayList<>();
  private boolean tellsChange;

  /**
   * @param change the first change, or null
   */
  SpokenAnswers(SpokenPhrases phrases, SpokenChange change) {
    this.phrases = phrases;
    this.change = change;
  }

  void say(String key, Object... blanks) {
    add(phrases.say(key, blanks));
  }

  /** A phrase that says what to change. */
  void tell(String key, Object... blanks) {
    say(key, blanks);
    tellsChange = true;
  }

  /** The same with the blank {does} alone. */
  void tellDoes(String key) {
    tell(key, "does", change.does());
  }

  void add(String line) {
    if (!lines.contains(line)) {
      lines.add(line);
    }
  }

  /** Whether there is a change that nothing has told yet. */
  boolean canTell() {
    return change != null && !tellsChange;
  }

  boolean tellsChange() {
    return tellsChange;
  }

  boolean isEmpty() {
    return lines.isEmpty();
  }

  int size() {
    return lines.size();
  }

  List<String> first(int most) {
    return lines.stream().limit(most).toList();
  }
}
