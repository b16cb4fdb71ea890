package easewright.reply;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.diagnosis.Answer;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Answers what the writer asked, from the judgement that was made; it advises nothing of its own.
 */
final class HerQuestions {
  private static final int MOST = 3;
  private static final String HOW = "how";

  /** Questions that ask for comfort more than for facts; one answer to all of them is enough. */
  private static final Set<String> COMFORT = Set.of("normal", "mad", "save", "again", "too");

  private final Answer answer;
  private final ThingAsked things;
  private final RuleBookSource book;
  private final Voice voice;
  private final SpokenChange change;
  private final SpokenTrial trial;
  private final Verdict verdict;
  private final ChangesAsked changes;
  private final SpokenAnswers said;
  private final TheChangeAsked theChange;
  private final StepAsked step;
  private final Set<String> kinds = new HashSet<>();
  private boolean tellsSize;
  private boolean suspected;

  HerQuestions(
      Answer answer,
      RuleBookSource book,
      Voice voice,
      SpokenPhrases phrases,
      SpokenChange change,
      SpokenTrial trial) {
    this.answer = answer;
    this.things = new ThingAsked(answer, book, voice, phrases);
    this.book = book;
    this.voice = voice;
    this.change = change;
    this.trial = trial;
    this.verdict = Verdict.of(answer);
    this.said = new SpokenAnswers(phrases, change);
    this.changes = new ChangesAsked(answer, book, voice, said, change, trial);
    boolean alone = new SpokenCause(answer, voice, phrases).isAlone();
    this.theChange = new TheChangeAsked(answer, book, voice, change, trial, verdict, alone, said);
    this.step = new StepAsked(answer, voice, change, trial, verdict, said, theChange);
    if (answer.read() != null) {
      answer.read().path("questions").forEach(this::question);
    }
  }

  /** The answers, at most three. */
  List<String> said() {
    return said.first(MOST);
  }

  /** Whether an answer already says what to change. */
  boolean tellsChange() {
    return said.tellsChange();
  }

  /** Whether an answer already says what an earlier change did. */
  boolean tellsTried() {
    return changes.tellsTried();
  }

  /** Whether she asks how the change is made. */
  boolean asksHow() {
    return kinds.contains(HOW);
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
      case "again" -> theChange.again(change != null && sizeAsked().isOfSize());
      case "amount" -> theChange.amount();
      case "place" -> theChange.place();
      case "wear" -> said.say(answer.cautions().isEmpty() ? "wear-yes" : "wear-ask");
      case "size" -> size(one);
      case "thing" -> suspect(things.answer(answer.read().path("questions")));
      case "save" -> theChange.save();
      case "mad", "me", "posture" -> said.say(kind);
      case "wait" ->
          said.say(
              verdict == Verdict.SOUND && answer.cautions().isEmpty() ? "wear-yes" : "wait-no");
      case "whole" -> theChange.whole();
      case "first" -> theChange.first();
      case "more" -> theChange.more();
      case "enough" -> theChange.enough();
      case "act" -> act(one);
      case "sides" -> step.sides();
      case HOW -> theChange.other();
      case "test" -> step.test();
      case "for-all" -> step.forAll();
      case "doctor" -> step.doctor();
      case "right" -> right(one);
      case "outside" -> outside(one);
      case "other", "buy", "measure" -> other(one);
      default -> {
        // what the reply says anyway has to do
      }
    }
  }

  private void act(JsonNode one) {
    if (!one.has("about")) {
      theChange.actElse();
    } else if (answer.asked().isEmpty()) {
      theChange.act(one.path("about").asText());
    }
  }

  private void other(JsonNode one) {
    if (said.isEmpty()) {
      suspect(things.asked(one));
    }
    theChange.other();
  }

  /** "Is she right?": what was advised is answered by itself where it was understood. */
  private void right(JsonNode one) {
    if (said.isEmpty()) {
      other(one);
    }
  }

  /** What no fitting answers is named only where she asks nothing else. */
  private void outside(JsonNode one) {
    if (answer.read().path("questions").size() == 1 && answer.asked().isEmpty()) {
      said.say("outside");
    } else {
      other(one);
    }
  }

  /** Whether no fault is known only because hardly anything is. */
  private boolean isThin() {
    return verdict == Verdict.SOUND && SpokenCause.isThin(answer, voice);
  }

  private void soundOnly(String key) {
    if (verdict == Verdict.SOUND && !isThin() || SpokenCause.isQuiet(answer, voice)) {
      said.say(key);
    }
  }

  private void normal() {
    if (answer.cautions().stream().anyMatch(one -> !one.urgency().equals("note"))) {
      if (answer.nothingTighter() && (verdict == Verdict.CLEAR || verdict == Verdict.OPEN)) {
        said.say("normal-common");
      }
      return; // the caution says it
    }
    switch (verdict) {
      case SOUND -> soundOnly("normal-sound");
      case CLEAR -> said.say("normal-fault");
      case OPEN -> said.say("normal-open");
      case UNTOLD -> soundOnly("normal-sound");
      default -> {
        // that several things could look like that is said anyway
      }
    }
  }

  private void cause() {
    Optional<String> cause = things.suspected();
    if (cause.isPresent()) {
      suspect(cause);
    } else if (verdict == Verdict.UNSAID) {
      said.say("cause-untold");
    }
  }

  /** What she suspects is answered once, however often she asks. */
  private void suspect(Optional<String> answered) {
    if (!suspected) {
      answered.ifPresent(said::add);
      suspected = answered.isPresent();
    }
  }

  private void what() {
    if (verdict == Verdict.SOUND) {
      said.say(isThin() ? "do-nothing-yet" : "do-nothing-sound");
    } else if (change == null && trial == null && verdict != Verdict.UNTOLD) {
      said.say("do-nothing-yet");
    }
  }

  private void must() {
    if (verdict == Verdict.SOUND || SpokenCause.isQuiet(answer, voice)) {
      soundOnly("do-nothing-sound");
    } else {
      theChange.must();
    }
  }

  private void size(JsonNode one) {
    if (changes.asksSize() || !answer.whyNot().isEmpty() && isSuspicion(one)) {
      return;
    }
    String direction = one.path("about").asText("");
    tellsSize = direction.isEmpty();
    String key = sizeAsked().key(direction);
    boolean tells = key != null && SizeAsked.TELLS_CHANGE.contains(key);
    if (tells && said.canTell()) {
      said.tellDoes(key);
    } else if (key != null && !tells) {
      said.say(key);
    }
  }

  private boolean isSuspicion(JsonNode one) {
    Optional<String> asked = things.asked(one);
    suspect(asked);
    return asked.isPresent();
  }

  private SizeAsked sizeAsked() {
    return new SizeAsked(answer, book, voice, change, trial, verdict);
  }
}
