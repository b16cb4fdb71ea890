package easewright.reply;

import static java.util.Comparator.comparing;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AskedNote;
import easewright.diagnosis.Answer.FailedNote;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Answers whether to make the changes that the writer named: "should I take in the band?" */
final class ChangesAsked {
  private final Answer answer;
  private final RuleBookSource book;
  private final Voice voice;
  private final SpokenPhrases phrases;
  private final SpokenChange change;
  private final SpokenTrial trial;
  private final Verdict verdict;
  private final List<String> said = new ArrayList<>();
  private boolean tellsChange;
  private boolean tellsTried;

  ChangesAsked(
      Answer answer,
      RuleBookSource book,
      Voice voice,
      SpokenPhrases phrases,
      SpokenChange change,
      SpokenTrial trial) {
    this.answer = answer;
    this.book = book;
    this.voice = voice;
    this.phrases = phrases;
    this.change = change;
    this.trial = trial;
    this.verdict = Verdict.of(answer);
    answer.asked().stream().sorted(comparing(one -> failed(one).isEmpty())).forEach(this::asked);
  }

  /** The answers, in the order in which to say them. */
  List<String> said() {
    return said;
  }

  /** Whether an answer already says what to change. */
  boolean tellsChange() {
    return tellsChange;
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
    boolean mayChange = change != null && !tellsChange;
    if (mayChange
        && (change.id().equals(note.id())
            || verdict == Verdict.CLEAR && isAlike(note.id(), change.id()))) {
      say(change.isSlackOnly() ? "asked-slack-only" : "asked-yes", "does", change.does());
      tellsChange = true;
      return;
    }
    switch (note.verdict()) {
      case "yes", "slack-only" -> {
        if (mayChange) {
          say("asked-" + note.verdict(), "does", change.does());
          tellsChange = true;
        }
      }
      case "instead", "later" -> rather(note);
      case "perhaps" -> say("asked-perhaps", "change", name(note));
      case "untold" ->
          say(tightens(note) ? "asked-untold-tighter" : "asked-untold", "change", name(note));
      case "not-tighter" -> say(isCautioned() ? "asked-not-tighter" : "asked-not-tighter-unread");
      default -> notNow(note);
    }
  }

  private void rather(AskedNote note) {
    if (tellsChange) {
      return;
    }
    String first = change == null ? answer.adjustments().get(0).name() : change.does();
    say("asked-" + note.verdict(), "change", name(note), "first", first);
    tellsChange = change != null;
  }

  private void notNow(AskedNote note) {
    if (verdict == Verdict.SOUND) {
      say("asked-no-fault", "change", name(note));
    } else if (tellsChange) {
      say("asked-leave", "change", name(note));
    } else if (change != null && verdict == Verdict.CLEAR) {
      say("asked-rather", "change", name(note), "first", change.does());
      tellsChange = true;
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

  private boolean isCautioned() {
    return answer.cautions().stream().anyMatch(one -> !one.urgency().equals("note"));
  }

  private void say(String key, Object... blanks) {
    said.add(phrases.say(key, blanks));
  }
}
