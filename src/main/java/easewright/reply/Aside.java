package easewright.reply;

import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;
import java.util.List;
import java.util.Optional;

/**
 * Says a kind word to a text that gets no answer: a thank you, another matter, another language, or
 * a question that tells nothing to go on.
 */
public final class Aside {
  private final Voice voice;

  /** Speaks with the words of this rule book. */
  public Aside(RuleBookSource book) {
    this.voice = book.wording().voices().get(Voice.USUAL);
  }

  /**
   * The paragraphs of a reply to a text that gets no answer.
   *
   * @param language that it is written in, where it is one that is not read
   * @param unclear whether it asks about fit and tells nothing to go on
   */
  public List<String> paragraphs(
      String text, Optional<String> language, boolean unclear, Addressee to) {
    SpokenPhrases phrases = new SpokenPhrases(voice, text);
    Pieces pieces = new Pieces();
    Greeting.say(false, null, to, phrases, pieces);
    if (language.isPresent()) {
      pieces.always(phrases.say("other-language", "language", language.get()));
    } else if (voice.talk().thanks(text) && !text.contains("?")) {
      pieces.always(phrases.say("other-thanks")).always(phrases.say("other-thanks-close"));
    } else if (unclear) {
      pieces.always(phrases.say("ask-more"));
    } else {
      if (voice.talk().thanks(text)) {
        pieces.always(phrases.say("other-thanks")).paragraph();
      }
      pieces.always(phrases.say("other-matter")).paragraph();
      pieces.always(phrases.say("other-matter-ask"));
    }
    pieces.paragraph().own(to.closing());
    return pieces.paragraphs(voice.talk());
  }
}
