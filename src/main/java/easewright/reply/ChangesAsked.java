package easewright.reply;

import static java.util.Comparator.comparing;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AskedNote;
import easewright.diagnosis.Answer.FailedNote;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;
import java.util.Optional;

/** Answers whether to make the changes that the writer named: "should I take in the band?" */
final class ChangesAsked {
  private final Answer answer;
  private final RuleBookSource book;
  private final Voice voice;
  private final SpokenChange change;
  private final SpokenTrial trial;
  private final Verdict verdict;
  private final SpokenAnswers said;
  private boolean tellsTried;

  ChangesAsked(
      Answer answer,
      RuleBookSource book,
      Voice voice,
      SpokenAnswers said,
      SpokenChange change,
      SpokenTrial trial) {
    this.answer = answer;
    this.book = book;
    this.voice = voice;
    this.said = said;
    this.change = change;
    this.trial = trial;
    this.verdict = Verdict.of(answer);
    answer.asked().stream()
        .sorted(
            comparing((AskedNote one) -> failed(one).isEmpty()).thenComparing(this::isTurnedDown))
        .forEach(this::asked);
  }

  /** What is turned down is said after what may be made. */
  private boolean isTurnedDown(AskedNote note) {
    return note.verdict().equals("not-now");
  }

  /** Whether an answer already says what an earlier change did. */
  boolean tellsTried() {
    return tellsTried;
  }

  /** Whether one of the changes asked about is another size. */
  boolean asksSize() {
    return answer.asked().stream()
        .anyMatch(
            one ->
                voice.talk().directions().values().stream()
                    .anyMatch(direction -> direction.contains(one.id())));
  }

  /** The same change, made before without help. */
  private Optional<FailedNote> failed(AskedNote note) {
    return answer.tried().stream().filter(one -> one.id().equals(note.id())).findFirst();
  }

  private void asked(AskedNote note) {
    Optional<FailedNote> failed = failed(note);
    if (failed.isPresent()) {
      say("asked-tried-" + failed.get().outcome());
      tellsTried = true;
      return;
    }
    if (trial != null && isAlike(note.id(), trial.id())) {
      say("asked-try");
      return;
    }
    if (isOfOneSideOnly(note)) {
      said.tellDoes("sides-only");
      return;
    }
    if (said.canTell()
        && (change.id().equals(note.id())
            || verdict == Verdict.CLEAR && isAlike(note.id(), change.id()))) {
      said.tellDoes(change.isSlackOnly() ? "asked-slack-only" : "asked-yes");
      return;
    }
    switch (note.verdict()) {
      case "yes", "slack-only" -> {
        if (said.canTell()) {
          said.tellDoes("asked-" + note.verdict());
        }
      }
      case "instead", "later" -> rather(note);
      case "perhaps" -> say("asked-perhaps", "change", name(note));
      case "untold" ->
          say(
              SpokenCause.isQuiet(answer, voice)
                  ? "asked-no-fault"
                  : tightens(note) ? "asked-untold-tighter" : "asked-untold",
              "change",
              name(note));
      case "not-tighter" -> say(isCautioned() ? "asked-not-tighter" : "asked-not-tighter-unread");
      default -> notNow(note);
    }
  }

  private void rather(AskedNote note) {
    if (said.tellsChange()) {
      return;
    }
    String key = "asked-" + note.verdict();
    if (change == null) {
      said.say(key, "change", name(note), "first", answer.adjustments().get(0).name());
    } else {
      said.tell(key, "change", name(note), "first", change.does());
    }
  }

  private void notNow(AskedNote note) {
    if (verdict == Verdict.SOUND) {
      say("asked-no-fault", "change", name(note));
    } else if (said.tellsChange()) {
      say("asked-leave", "change", name(note));
    } else if (change != null && verdict == Verdict.CLEAR) {
      said.tell("asked-rather", "change", name(note), "first", change.does());
    } else if (said.isEmpty()) {
      say("asked-not-now", "change", name(note));
    }
  }

  /** What tightens is not left to chance while nothing is known. */
  private boolean tightens(AskedNote note) {
    return book.catalog().adjustments().get(note.id()).tightens();
  }

  /** The change in words, with the edge that was spoken of where its name leaves that open. */
  private String name(AskedNote note) {
    String bare = voice.changes().get(note.id()).bare();
    return SpokenEdge.isLeftOpenIn(bare) ? new SpokenEdge(answer, voice).in(bare) : note.name();
  }

  /** Whether she may have meant this change. */
  private boolean isAlike(String asked, String meant) {
    return asked != null
        && (asked.equals(meant)
            || voice.talk().alike().stream()
                .anyMatch(group -> group.contains(asked) && group.contains(meant)));
  }

  /** "Shorten both?", where only one side is to be shortened. */
  private boolean isOfOneSideOnly(AskedNote note) {
    return said.canTell()
        && voice.talk().oneSided().contains(change.id())
        && isAlike(note.id(), change.id())
        && answer.read() != null
        && answer.read().path("questions").findValuesAsText("kind").contains("sides");
  }

  private boolean isCautioned() {
    return answer.cautions().stream().anyMatch(one -> !one.urgency().equals("note"));
  }

  private void say(String key, Object... blanks) {
    said.say(key, blanks);
  }
}
