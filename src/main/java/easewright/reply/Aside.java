package easewright.reply;

import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

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

  /** The questions of a text, each with the sentence before it. */
  private static String asked(String text) {
    List<String> sentences = List.of(text.split("(?<=[.!?])"));
    return IntStream.range(0, sentences.size())
        .filter(at -> sentences.get(at).endsWith("?"))
        .mapToObj(at -> String.join(" ", sentences.subList(Math.max(0, at - 1), at + 1)))
        .collect(Collectors.joining(" "));
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
    Optional<String> craft = voice.talk().craft(unclear ? asked(text) : text);
    Pieces pieces = new Pieces();
    Greeting.say(false, null, to, phrases, pieces);
    if (language.isPresent()) {
      pieces.always(phrases.say("other-language", "language", language.get()));
    } else if (voice.talk().thanks(text) && !text.contains("?")) {
      pieces.always(phrases.say("other-thanks")).always(phrases.say("other-thanks-close"));
    } else if (craft.isPresent()) {
      pieces.always(craft.get()).paragraph();
      pieces.always(phrases.say("other-matter-ask"));
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
