package easewright.reply;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.SignNote;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the wearer measured. */
final class AmountTold {
  /** A number with its unit, without the places that it is for. */
  private static final Pattern LENGTH = Pattern.compile("\\d[\\d./ ]{0,12}\\p{L}{1,12}");

  private AmountTold() {}

  /** Whether something seen was measured and the change that is advised first rests on a number. */
  static boolean counts(Answer answer) {
    return answer.understood().signs().stream().anyMatch(one -> one.amount() != null)
        && answer.adjustments().stream()
            .filter(one -> one.use().equals("first"))
            .anyMatch(one -> one.amount() != null && !one.amount().estimated());
  }

  /** The first amount of what was seen, as one says it; null where none was told. */
  static String first(Answer answer) {
    return answer.understood().signs().stream()
        .filter(SignNote::present)
        .map(SignNote::amount)
        .filter(Objects::nonNull)
        .map(LENGTH::matcher)
        .filter(Matcher::lookingAt)
        .map(found -> SpokenPhrases.length(found.group()))
        .findFirst()
        .orElse(null);
  }
}
