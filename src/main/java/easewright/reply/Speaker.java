package easewright.reply;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.CautionNote;
import easewright.diagnosis.Answer.SizeAdvice;
import easewright.diagnosis.Answer.TriedAsGiven;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;
import easewright.rulebook.Voice.CautionWords;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * Says an answer as a teacher would post it: greeting, what may hurt, the wearer's own question,
 * the likely cause, one change with its trial and its check, one thing to send back. The same
 * answer is always said in the same words.
 */
public final class Speaker {
  private final RuleBookSource book;
  private final Voice voice;

  /** Speaks with the words of this rule book. */
  public Speaker(RuleBookSource book) {
    this.book = book;
    this.voice = book.wording().voices().get(Voice.USUAL);
  }

  /** The paragraphs of the reply, each plain text on one line. */
  public List<String> paragraphs(Answer answer, Addressee to) {
    SpokenPhrases phrases = new SpokenPhrases(voice, content(answer));
    Pieces pieces = new Pieces();
    if (answer.isDanger()) {
      Greeting.say(true, null, to, phrases, pieces);
      danger(answer, phrases, pieces);
    } else {
      Greeting.say(false, Thanks.said(answer, voice, phrases), to, phrases, pieces);
      fit(answer, phrases, pieces);
    }
    pieces.paragraph().own(to.closing());
    return pieces.paragraphs(voice.talk());
  }

  private static String content(Answer answer) {
    return answer.causes().stream().limit(2).map(CauseNote::id).collect(Collectors.joining())
        + answer.understood().signs().stream()
            .map(Answer.SignNote::id)
            .collect(Collectors.joining())
        + answer.understood().sizeCut();
  }

  private void danger(Answer answer, SpokenPhrases phrases, Pieces pieces) {
    CautionNote gravest = answer.cautions().get(0);
    CautionWords words = words(gravest);
    pieces.always(words.says()).paragraph();
    pieces.always(gravest.doNow()).always(words.ask()).paragraph();
    if (!answer.notNow().equals(book.wording().say("not-now-danger"))
        && !answer.notNow().equals(book.wording().say("not-now-danger-worn"))) {
      pieces.always(answer.notNow());
    }
    List<String> more =
        serious(answer).stream()
            .skip(1)
            .map(one -> words(one).about())
            .filter(Objects::nonNull)
            .toList();
    if (!more.isEmpty()) {
      pieces.fits(phrases.say("caution-also", "names", list(more, phrases)));
    }
    SpokenChange later = SpokenChange.afterwards(answer, voice, phrases);
    if (later == null) {
      pieces.spare(gravest.after());
    } else {
      pieces.paragraph();
      pieces.fits(phrases.say("afterwards", "then", words.then(), "does", later.does()));
      pieces.fits(later.isProved(answer) ? null : later.trial(answer)).spare(later.check());
    }
  }

  private CautionWords words(CautionNote caution) {
    return voice.cautions().get(caution.id());
  }

  private static List<CautionNote> serious(Answer answer) {
    return answer.cautions().stream().filter(one -> !one.urgency().equals("note")).toList();
  }

  private static String list(List<String> names, SpokenPhrases phrases) {
    int last = names.size() - 1;
    String before = String.join(", ", names.subList(0, last));
    return last == 0
        ? names.get(0)
        : SpokenPhrases.lower(phrases.say("and", "these", before, "this", names.get(last)));
  }

  private void fit(Answer answer, SpokenPhrases phrases, Pieces pieces) {
    boolean sound = answer.noFault() != null;
    SpokenChange change = SpokenChange.of(answer, voice, phrases);
    boolean careLater = sound || change != null && !change.tightens() && onlyCare(answer);
    if (!careLater) {
      cautions(answer, phrases, pieces);
    }
    SpokenTrial trial = SpokenTrial.of(answer, voice, phrases);
    HerQuestions asked = new HerQuestions(answer, book, voice, phrases, change, trial);
    asked.said().forEach(pieces::always);
    if (!asked.tellsTried() && !sawItRight(answer)) {
      answer.tried().stream()
          .limit(1)
          .forEach(one -> pieces.fits(phrases.say("tried-" + one.outcome())));
    }
    SpokenCause cause = new SpokenCause(answer, voice, phrases);
    cause.say(change, pieces);
    pieces.paragraph();
    SendBack back = new SendBack(answer, book, voice, phrases);
    RoomLeft room = new RoomLeft(answer, book, phrases);
    if (sound) {
      cautions(answer, phrases, pieces);
    } else if (change != null) {
      change(answer, change, asked, phrases, pieces);
      if (cause.isBoth()) {
        second(answer, change, phrases, pieces);
      }
    } else if (trial != null) {
      pieces.always(trial.says(cause.besideAnother(trial.cause())));
    } else if (room.isLeft()) {
      room.say(asked.said(), pieces);
    } else if (!answer.heldBack().isEmpty() && !back.asksFirst()) {
      pieces.fits(phrases.say("hold"));
    }
    boolean sized = change != null && change.tellsSize();
    if (!sized && (asked.tellsSize() || Verdict.of(answer) == Verdict.UNSAID)) {
      size(answer.size(), phrases, pieces);
    }
    pieces.paragraph();
    if (careLater && !sound) {
      cautions(answer, phrases, pieces);
    }
    back.say(change != null, pieces);
  }

  /** Whether one of her trials helped: what the others did is not worth a word then. */
  private static boolean sawItRight(Answer answer) {
    List<TriedAsGiven> tried = answer.understood().tried();
    return tried != null
        && tried.stream()
            .anyMatch(one -> "right".equals(one.outcome()) || "better".equals(one.outcome()));
  }

  /** The change of the other of two causes. */
  private void second(Answer answer, SpokenChange first, SpokenPhrases phrases, Pieces pieces) {
    answer.causes().stream()
        .limit(2)
        .map(CauseNote::id)
        .filter(cause -> !first.cures(cause))
        .findFirst()
        .flatMap(cause -> SpokenChange.curing(cause, answer, voice, phrases))
        .ifPresent(one -> pieces.fits(phrases.say("change-second", "does", one.does())));
  }

  /**
   * Whether no caution asks for anything but care; beside a change that tightens nothing it can
   * wait.
   */
  private static boolean onlyCare(Answer answer) {
    return serious(answer).stream().allMatch(one -> one.urgency().equals("care"));
  }

  private void cautions(Answer answer, SpokenPhrases phrases, Pieces pieces) {
    List<CautionNote> cautions = serious(answer);
    if (!cautions.isEmpty()) {
      pieces.always(words(cautions.get(0)).says()).fits(words(cautions.get(0)).ask());
      cautions.stream().skip(1).forEach(one -> pieces.fits(words(one).says()));
    }
    pieces.paragraph();
  }

  private void change(
      Answer answer,
      SpokenChange change,
      HerQuestions asked,
      SpokenPhrases phrases,
      Pieces pieces) {
    if (!asked.tellsChange()) {
      tell(answer, change, phrases, pieces);
    }
    if (asked.asksHow()) {
      pieces.fits(change.steps());
    }
    if (change.measureFirst() != null) {
      pieces.fits(phrases.say("measure-first", "how", change.measureFirst()));
    }
    if (change.isSlackOnly()) {
      pieces.always(phrases.say("slack-only"));
    }
    SpokenChange next =
        voice.talk().then().contains(change.id())
            ? SpokenChange.next(answer, voice, phrases)
            : null;
    if (next != null) {
      pieces.fits(phrases.say("change-then", "does", next.does())).fits(next.trial(answer));
      pieces.spare(next.check());
      return;
    }
    pieces.fits(change.trial(answer));
    if (change.each() != null) {
      pieces.spare(phrases.say("each", "each", change.each()));
    }
    pieces.fits(change.check());
  }

  private void tell(Answer answer, SpokenChange change, SpokenPhrases phrases, Pieces pieces) {
    boolean clear = Verdict.of(answer) == Verdict.CLEAR || change.isProved(answer);
    if (change.isSafety()) {
      pieces.always(phrases.say("change-safety", "does", change.does()));
    } else if (new SpokenCause(answer, voice, phrases).isAlone()
        && !change.cures(answer.causes().get(0).id())) {
      pieces.always(
          phrases.say(
              "change-other",
              "perhaps",
              new SpokenEdge(answer, voice).in(voice.causes().get(change.cures()).perhaps()),
              "does",
              change.does()));
    } else {
      pieces.always(phrases.say(clear ? "change" : "change-open", "does", change.does()));
    }
  }

  private void size(SizeAdvice size, SpokenPhrases phrases, Pieces pieces) {
    if (size == null) {
      return;
    }
    if (size.recommended() == null) {
      pieces.always(phrases.say(size.withheld() == null ? "size-outside" : "size-withheld"));
    } else if (!size.insideChart()) {
      pieces.always(phrases.say("size-outside"));
    } else {
      boolean alone =
          size.recommended().probability() >= voice.talk().size() || size.neighbours().isEmpty();
      pieces.always(
          phrases.say(
              alone ? "size" : "size-close",
              "size",
              size.recommended().size(),
              "next",
              alone ? "" : size.neighbours().get(0).size()));
    }
  }
}
