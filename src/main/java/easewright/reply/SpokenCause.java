package easewright.reply;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.SignNote;
import easewright.rulebook.Voice;
import easewright.rulebook.Voice.Talk;
import java.util.List;
import java.util.Set;

/** Says the likely cause as surely as it is known. */
record SpokenCause(Answer answer, Voice voice, SpokenPhrases phrases) {

  /** Kinds of questions that ask whether all is well. */
  private static final Set<String> IS_IT_RIGHT = Set.of("normal", "need", "too");

  void say(Pieces pieces) {
    switch (Verdict.of(answer)) {
      case CLEAR -> pieces.always(clear(answer.causes().get(0)));
      case OPEN -> pieces.always(open());
      case UNTOLD ->
          pieces.always(phrases.say(isQuiet(answer, voice) ? "sound-so-far" : "doubt-untold"));
      case SOUND -> sound(pieces);
      default -> {
        // a danger is said apart, and without signs there is no cause to name
      }
    }
  }

  private void sound(Pieces pieces) {
    if (!isThin(answer, voice)) {
      pieces.always(phrases.say("sound"));
    } else if (answer.cautions().isEmpty()) {
      pieces.always(phrases.say("sound-thin"));
    }
  }

  /** Whether nothing is seen and little is denied, so that "nothing is wrong" says little. */
  static boolean isThin(Answer answer, Voice voice) {
    List<SignNote> signs = answer.understood().signs();
    return signs.stream().noneMatch(SignNote::present) && signs.size() < voice.talk().denials();
  }

  /**
   * Whether she only asks whether all is well, and names nothing but what she looked for in vain.
   */
  static boolean isQuiet(Answer answer, Voice voice) {
    List<SignNote> signs = answer.understood().signs();
    return Verdict.of(answer) == Verdict.UNTOLD
        && signs.size() >= voice.talk().denials()
        && signs.stream().noneMatch(SignNote::present)
        && answer.read() != null
        && answer.read().path("questions").findValuesAsText("kind").stream()
            .anyMatch(IS_IT_RIGHT::contains);
  }

  private String clear(CauseNote cause) {
    Talk talk = voice.talk();
    String key =
        cause.probability() >= talk.sure()
            ? "doubt-sure"
            : cause.probability() >= talk.likely() ? "doubt-likely" : "doubt-guess";
    return phrases.say(key, "so", so(cause));
  }

  private String open() {
    CauseNote first = answer.causes().get(0);
    if (!isEither()) {
      Talk talk = voice.talk();
      String key =
          first.probability() >= talk.sure()
              ? "doubt-likely"
              : first.probability() >= talk.likely() ? "doubt-guess" : "doubt-first";
      return phrases.say(key, "so", so(first));
    }
    return phrases.say(
        "doubt-either", "perhaps", perhaps(first), "other", perhaps(answer.causes().get(1)));
  }

  /** Whether one cause is named, and none beside it. */
  boolean isAlone() {
    return switch (Verdict.of(answer)) {
      case CLEAR -> true;
      case OPEN -> !isEither();
      default -> false;
    };
  }

  /** Whether two causes are named, since neither is much likelier than the other. */
  private boolean isEither() {
    return Verdict.of(answer) == Verdict.OPEN
        && answer.causes().size() > 1
        && answer.causes().get(0).probability()
            < voice.talk().alone() * answer.causes().get(1).probability();
  }

  /**
   * The cause as it was named beside another, so that a trial tells which of the two it shows; null
   * where it was not.
   */
  String besideAnother(String cause) {
    return isEither()
        ? answer.causes().stream()
            .limit(2)
            .filter(one -> one.id().equals(cause))
            .map(this::perhaps)
            .findFirst()
            .orElse(null)
        : null;
  }

  private String so(CauseNote cause) {
    return new SpokenEdge(answer, voice).in(voice.causes().get(cause.id()).so());
  }

  private String perhaps(CauseNote cause) {
    return new SpokenEdge(answer, voice).in(voice.causes().get(cause.id()).perhaps());
  }
}
