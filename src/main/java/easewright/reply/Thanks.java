package easewright.reply;

import static java.util.stream.Collectors.toSet;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.SignNote;
import easewright.diagnosis.Answer.TriedAsGiven;
import easewright.rulebook.Voice;
import java.util.List;
import java.util.Objects;
import java.util.Set;

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
      return ofTried(tried);
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

  /** What was tried counts before what was made, and that before what was only measured. */
  private static String ofTried(List<TriedAsGiven> tried) {
    Set<String> ways =
        tried.stream().map(one -> Objects.requireNonNullElse(one.how(), "")).collect(toSet());
    if (ways.equals(Set.of("measured"))) {
      return "thanks-measured";
    }
    return ways.equals(Set.of("")) || ways.equals(Set.of("", "measured"))
        ? "thanks-tried"
        : "thanks-trial";
  }
}
