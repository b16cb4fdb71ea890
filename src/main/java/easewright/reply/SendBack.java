package easewright.reply;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.PhotoNote;
import easewright.diagnosis.Answer.QuestionNote;
import easewright.diagnosis.Answer.ShiftNote;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** The one thing a reply asks to send back. */
record SendBack(Answer answer, RuleBookSource book, Voice voice, SpokenPhrases phrases) {

  /** Causes that a reply names at most. */
  private static final int NAMED = 2;

  /** Whether something is asked for before anything is changed. */
  boolean asksFirst() {
    return unplaced().isPresent() || question(false).isPresent();
  }

  /**
   * @param changes whether the reply tells a change
   */
  void say(boolean changes, Pieces pieces) {
    if (!changes && answer.trial() != null) {
      return; // what came of the trial is the one thing to send back
    }
    if (SpokenCause.isQuiet(answer, voice)) {
      pieces.fits(phrases.say("close-quiet"));
      return;
    }
    Verdict verdict = Verdict.of(answer);
    Optional<QuestionNote> question = question(changes);
    Optional<String> unplaced = unplaced();
    Optional<String> unread = unread();
    if (unplaced.isPresent()) {
      pieces.always(phrases.say("ask-where", "words", unplaced.get()));
    } else if (unread.isPresent()
        && verdict == Verdict.UNTOLD
        && (question.isEmpty() || holdsNumber(unread.get()))) {
      pieces.fits(phrases.say("ask-unread", "words", unread.get()));
    } else if (question.isPresent()) {
      boolean doubted = question.get().confirms() != null;
      String key = doubted ? "ask-doubted" : "ask-first";
      pieces.fits(phrases.say(key, "ask", asked(question.get().sign())));
      PhotoNote photo = question.get().photo();
      if (!doubted && photo != null) {
        pieces.spare(phrases.say("photo-" + photo.view()));
      }
    } else if (verdict == Verdict.SOUND && !SpokenCause.isThin(answer, voice)) {
      pieces.spare(phrases.say("close-sound"));
    } else if (verdict == Verdict.UNSAID && answer.size() != null) {
      pieces.spare(phrases.say("close-size"));
    } else {
      String key = changes ? "close-change" : unchanged(verdict);
      pieces.spare(phrases.say(changes && unread.isPresent() ? "close-unread" : key));
    }
    answer.measureAgain().stream().limit(1).forEach(one -> again(one.pointer(), pieces));
  }

  private String unchanged(Verdict verdict) {
    if (answer.nothingTighter()) {
      return "close-sound";
    }
    boolean placed = answer.understood().signs().stream().anyMatch(Answer.SignNote::present);
    return verdict == Verdict.CLEAR ? "hold" : placed ? "ask-when" : "ask-more";
  }

  /** A statement that was not understood; left out beside a caution. */
  private Optional<String> unread() {
    if (answer.read() == null || !answer.cautions().isEmpty()) {
      return Optional.empty();
    }
    for (JsonNode one : answer.read().path("notUnderstood")) {
      String words = one.path("text").asText().strip();
      int length = words.split("\\s+").length;
      if (length >= voice.talk().quoted().from() && length <= voice.talk().quoted().to()) {
        return Optional.of(words);
      }
    }
    return Optional.empty();
  }

  /** What she measured is asked about before anything she did not speak of. */
  private static boolean holdsNumber(String words) {
    return words.chars().anyMatch(Character::isDigit);
  }

  private void again(String pointer, Pieces pieces) {
    if (pointer.startsWith("/body/")) {
      String name = pointer.split("/")[2].replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
      pieces.spare(phrases.say("length-unusual", "name", name));
    }
  }

  /** What the text says is seen and not where; left out beside a caution. */
  private Optional<String> unplaced() {
    if (answer.read() == null || !answer.cautions().isEmpty()) {
      return Optional.empty();
    }
    for (JsonNode one : answer.read().path("notUnderstood")) {
      String words = one.path("text").asText();
      if (one.has("where") && words.split("\\s+").length <= voice.talk().placed()) {
        return Optional.of(words);
      }
    }
    return Optional.empty();
  }

  private Optional<QuestionNote> question(boolean changes) {
    boolean settled = Verdict.of(answer) == Verdict.CLEAR && answer.nothingTighter();
    if (changes || settled || Verdict.of(answer) == Verdict.UNSAID) {
      return Optional.empty(); // how the change went, or whether it rubs, is what to send back
    }
    return answer.questions().stream()
        .filter(one -> one.confirms() == null || isDoubted(one.sign()))
        .filter(one -> isMeaningful(one.sign()))
        .filter(one -> one.confirms() != null || isNearby(one.sign()) || moves(one))
        .findFirst();
  }

  /** Whether what the question takes for granted was seen: "does the gape close?" */
  private boolean isMeaningful(String sign) {
    List<String> needed = voice.talk().presupposes().get(sign);
    return needed == null
        || answer.understood().signs().stream()
            .anyMatch(one -> one.present() && needed.contains(one.id()));
  }

  /** Whether the reply would move a cause that was named. */
  private boolean moves(QuestionNote one) {
    return answer.causes().stream()
        .limit(NAMED)
        .anyMatch(cause -> isOf(one.yesMoves(), cause) || isOf(one.noMoves(), cause));
  }

  private static boolean isOf(ShiftNote shift, CauseNote cause) {
    return shift != null && shift.id().equals(cause.id());
  }

  /** Whether her words may well have meant something else. */
  private boolean isDoubted(String sign) {
    if (answer.read() == null || answer.soFar() == null) {
      return true;
    }
    JsonNode signs = answer.soFar().path("signs");
    for (int i = 0; i < signs.size(); i++) {
      if (signs.get(i).path("sign").asText().equals(sign)) {
        String pointer = "/signs/" + i;
        for (JsonNode span : answer.read().path("spans")) {
          if (span.path("pointer").asText().equals(pointer)) {
            return span.path("confidence").asDouble() < voice.talk().doubted();
          }
        }
      }
    }
    return true;
  }

  /** Whether a sign is of the same piece as one that was seen, as their names tell. */
  private boolean isNearby(String sign) {
    Set<String> words = words(sign);
    return answer.understood().signs().stream()
        .filter(Answer.SignNote::present)
        .anyMatch(one -> words(one.id()).stream().anyMatch(words::contains));
  }

  private Set<String> words(String sign) {
    return Arrays.stream(sign.split("-"))
        .filter(voice.talk().pieces()::contains)
        .collect(Collectors.toSet());
  }

  private String asked(String sign) {
    String spoken = voice.questions().get(sign);
    return spoken == null ? book.catalog().signs().get(sign).ask() : spoken;
  }
}
