package easewright.reply;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.EvidenceNote;
import easewright.diagnosis.Answer.SignNote;
import easewright.rulebook.Voice;
import easewright.rulebook.Voice.Clue;
import easewright.rulebook.Voice.Talk;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Says the likely cause as surely as it is known. */
record SpokenCause(Answer answer, Voice voice, SpokenPhrases phrases) {

  /**
   * @param change the first change, or null
   */
  void say(SpokenChange change, Pieces pieces) {
    Verdict verdict = Verdict.of(answer);
    if (verdict == Verdict.CLEAR || verdict == Verdict.OPEN) {
      Optional<CauseNote> proved = proved(change);
      if (proved.isPresent()) {
        pieces.always(phrases.say("doubt-proved", "so", so(proved.get())));
        return;
      }
      if (isBoth()) {
        pieces.always(
            phrases.say(
                "doubt-both",
                "so",
                so(answer.causes().get(0)),
                "also",
                so(answer.causes().get(1))));
        return;
      }
    }
    switch (verdict) {
      case CLEAR -> {
        pieces.always(clear(answer.causes().get(0)));
        clue(pieces);
      }
      case OPEN -> {
        pieces.always(open());
        if (!isEither()) {
          clue(pieces);
        }
      }
      case UNTOLD ->
          pieces.always(phrases.say(isQuiet(answer, voice) ? "sound-so-far" : "doubt-untold"));
      case SOUND -> sound(pieces);
      default -> {
        // a danger is said apart, and without signs there is no cause to name
      }
    }
  }

  /** The cause that the change treats, where her own trial of it was right. */
  private Optional<CauseNote> proved(SpokenChange change) {
    return change == null || !change.isProved(answer)
        ? Optional.empty()
        : answer.causes().stream().filter(one -> change.cures(one.id())).findFirst();
  }

  /** A test of hers, or the strongest reason that can be named; for a mere guess only a test. */
  private void clue(Pieces pieces) {
    boolean likely = answer.causes().get(0).probability() >= voice.talk().likely();
    List<EvidenceNote> reasons = answer.causes().get(0).evidenceFor();
    Stream.concat(reasons.stream().filter(this::isTest), likely ? reasons.stream() : Stream.empty())
        .filter(one -> clue(one) != null)
        .findFirst()
        .ifPresent(
            one -> {
              String said = phrases.say("clue", "clue", clue(one));
              if (isTest(one)) {
                pieces.fits(said);
              } else {
                pieces.spare(said);
              }
            });
  }

  private boolean isTest(EvidenceNote note) {
    return voice.talk().tests().contains(note.id());
  }

  private String clue(EvidenceNote note) {
    Clue clue = voice.clues().get(note.id());
    return clue == null ? null : note.present() ? clue.seen() : clue.not();
  }

  /** Whether two causes are there, rather than one or the other. */
  boolean isBoth() {
    return answer.causes().size() > 1
        && answer.causes().get(0).probability() + answer.causes().get(1).probability()
            >= voice.talk().both();
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

  /** Whether she asks about what she has, and names nothing but what she looked for in vain. */
  static boolean isQuiet(Answer answer, Voice voice) {
    List<SignNote> signs = answer.understood().signs();
    return Verdict.of(answer) == Verdict.UNTOLD
        && signs.size() >= voice.talk().denials()
        && signs.stream().noneMatch(SignNote::present)
        && answer.read() != null
        && !answer.read().path("questions").isEmpty()
        && answer.read().path("notUnderstood").findValues("perhaps").stream()
            .allMatch(JsonNode::isEmpty); // else what was not understood may be the fault
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
      case CLEAR -> !isBoth();
      case OPEN -> !isBoth() && !isEither();
      default -> false;
    };
  }

  /** Whether two causes are named, since neither is much likelier than the other. */
  private boolean isEither() {
    return Verdict.of(answer) == Verdict.OPEN
        && !isBoth()
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
