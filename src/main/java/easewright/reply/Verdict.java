package easewright.reply;

import easewright.diagnosis.Answer;

/** How far an answer knows what is wrong. */
public enum Verdict {
  /** One cause is likely enough to change something for. */
  CLEAR,
  /** A few causes are in play. */
  OPEN,
  /** What was reported has too many explanations for any to be named. */
  UNTOLD,
  /** What was reported points to no fault. */
  SOUND,
  /** Nothing to say about causes: none was asked about, or a clinician comes first. */
  UNSAID;

  static Verdict of(Answer answer) {
    if (answer.clear()) {
      return CLEAR;
    }
    if (!answer.cautions().isEmpty() && answer.cautions().get(0).urgency().equals("stop")) {
      return UNSAID;
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
