package easewright.reply;

import easewright.diagnosis.Answer;
import easewright.rulebook.Voice;

/**
 * Answers questions about the work: on one side or both, whether a test was good, whether the paper
 * pattern changes too; and whether to see a doctor.
 *
 * @param change the first change, or null
 * @param trial what is to be tried before any change, or null
 */
record StepAsked(
    Answer answer,
    Voice voice,
    SpokenChange change,
    SpokenTrial trial,
    Verdict verdict,
    SpokenAnswers said,
    TheChangeAsked theChange) {

  /** "One side only, or both?", "must they match?" */
  void sides() {
    if (verdict == Verdict.SOUND) {
      said.say("sides-sound");
    } else if (change == null && trial == null) {
      said.say("sides-untold");
    } else {
      String id = change == null ? trial.id() : change.id();
      said.say(voice.talk().oneSided().contains(id) ? "sides-one" : "sides-both");
    }
  }

  /** "Was my test right?", "how can I test it?" */
  void test() {
    if (change != null && change.isProved(answer)) {
      said.say("test-proved");
    } else if (trial != null) {
      said.say("test-first");
    } else {
      theChange.other();
    }
  }

  /** "Must I change the paper too?", "is that so for my other bras?" */
  void forAll() {
    if (verdict == Verdict.SOUND) {
      said.say("for-all-sound");
    } else if (change != null || trial != null) {
      said.say("for-all");
    }
  }

  /** "Should I see a doctor?": where a caution stands, it says so itself. */
  void doctor() {
    if (answer.cautions().isEmpty()) {
      said.say("doctor");
    }
  }
}
