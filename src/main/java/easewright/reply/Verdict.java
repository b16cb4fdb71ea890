package easewright.reply;

import easewright.diagnosis.Answer;

/** How certain an answer is about what is wrong. */
public enum Verdict {
  /** A danger takes precedence over the fit. */
  DANGER,
  /** One cause is likely enough to justify a change. */
  CLEAR,
  /** A few causes are possible. */
  OPEN,
  /** The report has too many explanations to name any. */
  UNTOLD,
  /** The report points to no fault. */
  SOUND,
  /** No statement about causes: none was asked for. */
  UNSAID;

  static Verdict of(Answer answer) {
    return switch (answer.verdict()) {
      case "danger" -> DANGER;
      case "clear" -> CLEAR;
      case "open" -> OPEN;
      case "untold" -> UNTOLD;
      case "no-fault" -> SOUND;
      default -> UNSAID;
    };
  }
}
