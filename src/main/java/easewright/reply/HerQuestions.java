package easewright.reply;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.diagnosis.Answer;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Answers what the writer asked, from the judgement that was made; it advises nothing of its own.
 */
final class HerQuestions {
  private static final int MOST = 2;

  /** Questions that ask for comfort more than for facts; one answer to all of them is enough. */
  private static final Set<String> COMFORT = Set.of("normal", "mad", "save", "again", "too");

  private final Answer answer;
  private final ThingAsked things;
  private final Voice voice;
  private final SpokenPhrases phrases;
  private final SpokenChange change;
  private final SpokenTrial trial;
  private final Verdict verdict;
  private final ChangesAsked changes;
  private final List<String> said = new ArrayList<>();
  private final Set<String> kinds = new HashSet<>();
  private boolean tellsChange;
  private boolean tellsSize;

  HerQuestions(
      Answer answer,
      RuleBookSource book,
      Voice voice,
      SpokenPhrases phrases,
      SpokenChange change,
      SpokenTrial trial) {
    this.answer = answer;
    this.things = new ThingAsked(answer, book, voice, phrases);
    this.voice = voice;
    this.phrases = phrases;
    this.change = change;
    this.trial = trial;
    this.verdict = Verdict.of(answer);
    this.changes = new ChangesAsked(answer, book, voice, phrases, change, trial);
    this.said.addAll(changes.said());
    this.tellsChange = changes.tellsChange();
    if (answer.read() != null) {
      answer.read().path("questions").forEach(this::question);
    }
  }

  /** The answers, at most two. */
  List<String> said() {
    return said.stream().distinct().limit(MOST).toList();
  }

  /** Whether an answer already says what to change. */
  boolean tellsChange() {
    return tellsChange;
  }

  /** Whether an answer already says what an earlier change did. */
  boolean tellsTried() {
    return changes.tellsTried();
  }

  /** Whether the size is what she asked for. */
  boolean tellsSize() {
    return tellsSize;
  }

  private void question(JsonNode one) {
    String kind = one.path("kind").asText();
    boolean comforted = COMFORT.contains(kind) && kinds.stream().anyMatch(COMFORT::contains);
    if (said.size() >= MOST || comforted || !kinds.add(kind)) {
      return;
    }
    switch (kind) {
      case "normal" -> normal();
      case "too", "need" -> soundOnly(kind + "-sound");
      case "cause" -> cause();
      case "do" -> what();
      case "must" -> must();
      case "again" -> again();
      case "amount" -> amount();
      case "place" -> place();
      case "wear" -> say(answer.cautions().isEmpty() ? "wear-yes" : "wear-ask");
      case "size" -> size(one);
      case "thing" -> things.answer(answer.read().path("questions")).ifPresent(said::add);
      case "mad", "save", "me", "posture" -> say(kind);
      case "wait" ->
          say(verdict == Verdict.SOUND && answer.cautions().isEmpty() ? "wear-yes" : "wait-no");
      case "other" -> things.asked(one).ifPresent(said::add);
      case "whole" -> whole();
      case "first" -> first();
      case "more" -> more();
      case "enough" -> enough();
      default -> {
        // what the reply says anyway has to do
      }
    }
  }

  /** Whether no fault is known only because hardly anything is. */
  private boolean isThin() {
    return verdict == Verdict.SOUND && SpokenCause.isThin(answer, voice);
  }

  private void soundOnly(String key) {
    if (verdict == Verdict.SOUND && !isThin() || SpokenCause.isQuiet(answer, voice)) {
      say(key);
    }
  }

  private void normal() {
    if (answer.cautions().stream().anyMatch(one -> !one.urgency().equals("note"))) {
      return; // the caution says it
    }
    switch (verdict) {
      case SOUND -> soundOnly("normal-sound");
      case CLEAR -> say("normal-fault");
      case OPEN -> say("normal-open");
      case UNTOLD -> soundOnly("normal-sound");
      default -> {
        // that several things could look like that is said anyway
      }
    }
  }

  private void cause() {
    Optional<String> suspected = things.suspected();
    if (suspected.isPresent()) {
      said.add(suspected.get());
    } else if (verdict == Verdict.UNSAID) {
      say("cause-untold");
    }
  }

  private void what() {
    if (verdict == Verdict.SOUND) {
      say(isThin() ? "do-nothing-yet" : "do-nothing-sound");
    } else if (change == null && trial == null && verdict != Verdict.UNTOLD) {
      say("do-nothing-yet");
    }
  }

  private void must() {
    if (verdict == Verdict.SOUND) {
      soundOnly("do-nothing-sound");
    } else if (verdict == Verdict.CLEAR && change != null && !tellsChange) {
      tell("asked-yes");
    } else if (trial != null) {
      say("must-try");
    }
  }

  private void again() {
    boolean ofSize = change != null && sizeAsked().isOfSize();
    say(AgainAsked.key(change, verdict, ofSize));
  }

  private void amount() {
    if (trial != null) {
      if (trial.tellsNumber()) {
        say("amount-try", "amount", trial.amount());
      }
    } else if (change == null) {
      if (verdict != Verdict.SOUND && verdict != Verdict.UNSAID) {
        say("amount-unknown");
      }
    } else if (!tellsChange && change.tellsNumber()) {
      tell(change.isEstimated() ? "amount-guess" : "change");
    } else if (!tellsChange) {
      tell("amount-none");
    }
  }

  /** "All of it, or only half?" */
  private void whole() {
    if (change != null && !tellsChange && !change.isEstimated() && change.tellsNumber()) {
      tell("whole");
    }
  }

  private void first() {
    if (trial != null) {
      say("first-try");
    } else if (change != null && !tellsChange) {
      tell("first");
    }
  }

  private void more() {
    if (change != null && !tellsChange) {
      boolean undone = voice.talk().then().contains(change.id());
      tell(undone ? "more-undo" : change.isMadeBefore(answer) ? "more-yes" : "more-no");
    }
  }

  private void enough() {
    if (said.isEmpty() && change != null && change.isProved(answer)) {
      say("enough-yes");
    }
  }

  private void place() {
    if (change == null) {
      if (trial == null) {
        say(verdict == Verdict.SOUND ? "do-nothing-sound" : "place-unknown");
      }
    } else if (!tellsChange) {
      tell(verdict == Verdict.CLEAR ? "change" : "change-open");
    }
  }

  private void tell(String key) {
    say(key, "does", change.does());
    tellsChange = true;
  }

  private void size(JsonNode one) {
    if (changes.asksSize()
        || !answer.whyNot().isEmpty() && things.asked(one).map(said::add).isPresent()) {
      return;
    }
    String direction = one.path("about").asText("");
    tellsSize = direction.isEmpty();
    String key = sizeAsked().key(direction);
    boolean tells = key != null && SizeAsked.TELLS_CHANGE.contains(key);
    if (key != null && !(tells && tellsChange)) {
      say(key, "does", change == null ? "" : change.does());
      tellsChange |= tells;
    }
  }

  private SizeAsked sizeAsked() {
    return new SizeAsked(answer, voice, change, trial, verdict);
  }

  private void say(String key, Object... blanks) {
    said.add(phrases.say(key, blanks));
  }
}
