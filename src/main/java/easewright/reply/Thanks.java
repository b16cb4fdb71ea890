package easewright.reply;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.SignNote;
import easewright.diagnosis.Answer.TriedAsGiven;
import easewright.rulebook.Voice;
import java.util.List;

/** What to thank for, chosen by what the wearer did. */
final class Thanks {
  private Thanks() {}

  /** The thanks, a sentence without its greeting. */
  static String said(Answer answer, Voice voice, SpokenPhrases phrases) {
    String measured = AmountTold.first(answer);
    return phrases.say(key(answer, voice), "amount", measured == null ? "" : measured);
  }

  private static String key(Answer answer, Voice voice) {
    List<SignNote> signs = answer.understood().signs();
    List<TriedAsGiven> tried = answer.understood().tried();
    if (signs.stream().anyMatch(one -> voice.talk().tests().contains(one.id()))) {
      return "thanks-trial";
    }
    if (tried != null) {
      return tried.stream().anyMatch(one -> one.how() != null) ? "thanks-trial" : "thanks-tried";
    }
    if (answer.noFault() != null && signs.stream().noneMatch(SignNote::present)) {
      return SpokenCause.isThin(answer, voice) ? "thanks-asked" : "thanks-sound";
    }
    if (AmountTold.counts(answer)) {
      return AmountTold.first(answer) == null ? "thanks-amount" : "thanks-number";
    }
    if (answer.understood().body().size() > 1) {
      return "thanks-measured";
    }
    if (signs.stream().anyMatch(one -> !one.present())) {
      return "thanks-looked";
    }
    return signs.isEmpty() ? "thanks-asked" : "thanks-described";
  }
}
