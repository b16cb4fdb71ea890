package easewright.reply;

import easewright.diagnosis.Answer;

/** How far an answer knows what is wrong. */
public enum Verdict {
  /** A danger comes before the fit. */
  DANGER,
  /** One cause is likely enough to change something for. */
  CLEAR,
  /** A few causes are in play. */
  OPEN,
  /** What was reported has too many explanations for any to be named. */
  UNTOLD,
  /** What was reported points to no fault. */
  SOUND,
  /** Nothing to say about causes: none was asked about. */
  UNSAID;

  static Verdict of(Answer answer) {
    if (answer.isDanger()) {
      return DANGER;
    }
    if (answer.clear()) {
      return CLEAR;
    }
    if (!answer.causes().isEmpty()) {
      return OPEN;
    }
    if (!answer.unexplained().isEmpty()) {
      return UNTOLD;
    }
    return answer.understood().signs().isEmpty() ? UNSAID : SOUND;
  }
}
