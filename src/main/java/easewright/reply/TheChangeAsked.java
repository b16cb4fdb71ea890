package easewright.reply;

import easewright.diagnosis.Answer;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;

/**
 * Answers questions about the one change that is advised: how much, where, whether to go on, to
 * make it closer or to begin again.
 *
 * @param change the first change, or null
 * @param trial what is to be tried before any change, or null
 * @param alone whether one cause is named, and none beside it
 */
record TheChangeAsked(
    Answer answer,
    RuleBookSource book,
    Voice voice,
    SpokenChange change,
    SpokenTrial trial,
    Verdict verdict,
    boolean alone,
    SpokenAnswers said) {
  private static final String CLOSER = "closer";

  /** Whether a caution is why nothing is changed. */
  private boolean isWithheld() {
    return answer.nothingTighter()
        && change == null
        && trial == null
        && (verdict == Verdict.CLEAR || verdict == Verdict.OPEN);
  }

  void must() {
    if (verdict == Verdict.CLEAR && said.canTell()) {
      said.tellDoes("asked-yes");
    } else if (trial != null) {
      said.say("must-try");
    } else if (isWithheld()) {
      said.say("do-nothing-yet");
    }
  }

  /**
   * @param ofSize whether the change is another size
   */
  void again(boolean ofSize) {
    if (isWithheld()) {
      said.say("again-nothing");
    } else {
      boolean proved = change != null && change.isProved(answer);
      boolean quiet = SpokenCause.isQuiet(answer, voice);
      said.say(AgainAsked.key(change, verdict, ofSize, isForTheNextOne(), proved, quiet));
    }
  }

  /** "Can this one be saved?" */
  void save() {
    said.say(verdict == Verdict.CLEAR && isForTheNextOne() ? "save-next" : "save");
  }

  private boolean isForTheNextOne() {
    return change != null && voice.talk().nextOne().contains(change.id());
  }

  void amount() {
    if (trial != null) {
      if (trial.tellsNumber()) {
        said.say("amount-try", "amount", trial.amount());
      }
    } else if (isWithheld()) {
      String measured = AmountTold.first(answer);
      if (measured == null) {
        said.say("amount-nothing");
      } else {
        said.say("amount-later", "amount", measured);
      }
    } else if (change == null) {
      if (verdict != Verdict.SOUND && verdict != Verdict.UNSAID) {
        said.say("amount-unknown");
      }
    } else if (said.canTell() && change.tellsNumber()) {
      said.tellDoes(change.isEstimated() ? "amount-guess" : "change");
    } else if (said.canTell()) {
      said.tellDoes("amount-none");
    }
  }

  /** "All of it, or only half?" */
  void whole() {
    if (isWithheld()) {
      amount();
    } else if (said.canTell() && !change.isEstimated() && change.tellsNumber()) {
      said.tellDoes("whole");
    }
  }

  void first() {
    if (trial != null) {
      said.say("first-try");
    } else if (said.canTell()) {
      said.tellDoes("first");
    }
  }

  /** "Shall I go on?" */
  void more() {
    if (isWithheld()) {
      said.say("more-nothing");
    } else if (said.canTell()) {
      boolean undone = voice.talk().then().contains(change.id());
      said.tellDoes(undone ? "more-undo" : change.isMadeBefore(answer) ? "more-yes" : "more-no");
    }
  }

  void enough() {
    if (said.isEmpty() && change != null) {
      if (change.isProved(answer)) {
        said.say("enough-yes");
      } else if (verdict == Verdict.CLEAR && !change.isSafety()) {
        said.say("enough-likely");
      }
    }
  }

  void place() {
    if (isWithheld()) {
      said.say("do-nothing-yet");
    } else if (change == null) {
      if (trial == null) {
        said.say(verdict == Verdict.SOUND ? "do-nothing-sound" : "place-unknown");
      }
    } else if (said.canTell()) {
      said.tellDoes(verdict == Verdict.CLEAR ? "change" : "change-open");
    }
  }

  /** "Should I make it tighter?", "... let it out?" */
  void act(String direction) {
    boolean closer = CLOSER.equals(direction);
    if (verdict == Verdict.SOUND || SpokenCause.isQuiet(answer, voice)) {
      said.say("act-no-fault");
    } else if (closer && answer.nothingTighter()) {
      said.say("asked-not-tighter");
    } else if (trial != null) {
      said.say(goes(closer, trial.id()) ? "asked-try" : "act-untold");
    } else if (said.canTell()) {
      String key = goes(closer, change.id()) ? "asked-yes" : "act-rather";
      said.tellDoes(alone || change.isProved(answer) ? key : "act-first");
    } else if (change == null && !isWithheld()) {
      said.say("act-untold");
    }
  }

  /** "Should I glue it?": something else than any change that could be advised. */
  void actElse() {
    if (verdict == Verdict.SOUND || SpokenCause.isQuiet(answer, voice)) {
      said.say("act-no-fault");
    } else if (trial != null) {
      said.say("act-untold");
    } else if (said.canTell() && !change.isSafety()) {
      said.tellDoes(alone || change.isProved(answer) ? "act-else" : "act-first");
    } else if (change == null && !isWithheld()) {
      said.say("act-untold");
    }
  }

  private boolean goes(boolean closer, String id) {
    return closer
        ? book.catalog().adjustments().get(id).tightens()
        : voice.talk().roomier().contains(id);
  }

  /** Any other question is answered by what to do, where one cause is named. */
  void other() {
    boolean clear = verdict == Verdict.CLEAR;
    if ((clear || alone) && said.isEmpty() && said.canTell() && !change.isSafety()) {
      said.tellDoes(clear ? "change" : "change-open");
    }
  }
}
