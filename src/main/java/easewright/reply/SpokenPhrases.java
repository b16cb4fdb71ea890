package easewright.reply;

import easewright.diagnosis.Answer.Amount;
import easewright.rulebook.RuleBookFault;
import easewright.rulebook.Voice;
import easewright.rulebook.Wording;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The phrases of a voice. Of several ways of saying a thing the content of the answer picks one.
 */
final class SpokenPhrases {
  private static final Pattern MILLIMETRES = Pattern.compile("(?<!\\d)(\\d{1,4}) mm");

  private final Voice voice;
  private final int content;

  /**
   * @param content what the reply is about; the same content always picks the same words
   */
  SpokenPhrases(Voice voice, String content) {
    this.voice = voice;
    this.content = content.hashCode();
  }

  /**
   * A phrase with its blanks filled in, beginning with a capital letter.
   *
   * @param blanks name and value of each blank, in turn
   */
  String say(String key, Object... blanks) {
    List<String> ways = voice.phrases().get(key);
    if (ways == null) {
      throw new RuleBookFault("The voice has no phrase called " + key + ".");
    }
    String way = ways.get(Math.floorMod(content + key.hashCode(), ways.size()));
    return begin(Wording.fill(way, blanks));
  }

  /** With a capital first letter. */
  static String begin(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** With a small first letter, to stand within a sentence. */
  static String lower(String text) {
    return text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
  }

  /** A length as one says it, "about" where it is a first step. */
  static String amount(Amount amount, SpokenPhrases phrases) {
    String text = length(amount.text());
    return amount.estimated() ? lower(phrases.say("amount-estimated", "amount", text)) : text;
  }

  /** As sewers say it: "20 mm" is "2 cm", "5 mm" stays as it is. */
  static String length(String text) {
    return MILLIMETRES
        .matcher(text)
        .replaceAll(found -> Matcher.quoteReplacement(centimetres(found.group(1), found.group())));
  }

  private static String centimetres(String number, String asWritten) {
    int mm = Integer.parseInt(number);
    if (mm < 10) {
      return asWritten;
    }
    return (mm % 10 == 0 ? String.valueOf(mm / 10) : mm / 10 + "." + mm % 10) + " cm";
  }
}
