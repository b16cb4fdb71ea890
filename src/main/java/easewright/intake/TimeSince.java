package easewright.intake;

import easewright.intake.Reading.TextRead;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How long ago something was: "five months ago", "8 weeks after", "it'll be a year". */
final class TimeSince {
  private static final int FARTHEST = 25;

  /** A time tied to the event by a word weighs as much as one this many words nearer. */
  private static final int TIED = 20;

  private static final double DAYS_A_MONTH = 365.25 / 12;
  private static final List<String> COUNTS =
      List.of(
          "half",
          "a",
          "two",
          "three",
          "four",
          "five",
          "six",
          "seven",
          "eight",
          "nine",
          "ten",
          "eleven",
          "twelve",
          "thirteen",
          "fourteen",
          "fifteen",
          "sixteen",
          "seventeen",
          "eighteen",
          "nineteen",
          "twenty");
  private static final Pattern TIME =
      Pattern.compile(
          "(?<![\\p{L}\\d.,])(?:(?<count>\\d{1,2}|a couple of|couple of|half a|an?|one|"
              + String.join("|", COUNTS.subList(2, COUNTS.size()))
              + ")(?: and a half|[.,]5)?(?:[ -]| to | or |-)?(?:\\d{1,2} )?[ -]?(?<unit>days?|weeks?|wks?|months?|mths?|mos?|years?|yrs?)|last (?<last>week|month))(?![\\p{L}\\d])(?![ -]old)(?<half> and a half)?",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern TIE =
      Pattern.compile(
          "\\s*(?:ago|after|since|post|out|from|on(?= from)|now|tomorrow|back|on (?:mon|tues|wednes|thurs|fri|satur|sun)day).*",
          Pattern.CASE_INSENSITIVE | Pattern.DOTALL);

  private TimeSince() {}

  /** The time nearest to an event, in whole months. */
  static Optional<TextRead> of(TextSpan event, Post post) {
    Matcher time = TIME.matcher(post.text());
    TextRead best = null;
    int nearest = Integer.MAX_VALUE;
    while (time.find()) {
      TextSpan span = new TextSpan(time.start(), time.end());
      String after =
          post.text().substring(time.end(), Math.min(post.text().length(), time.end() + 16));
      boolean tied = time.group("last") != null || TIE.matcher(after).matches();
      int distance = Whereabouts.wordsBetween(post, span, event);
      int rank = distance + (tied ? 0 : TIED);
      boolean near =
          tied
              || post.sentence()[Whereabouts.wordAt(post, span.from())]
                  == post.sentence()[Whereabouts.wordAt(post, event.from())];
      if (near && distance <= FARTHEST && rank < nearest) {
        nearest = rank;
        best = new TextRead(String.valueOf(months(time)), span, tied ? 0.9 : 0.7);
      }
    }
    return Optional.ofNullable(best);
  }

  private static long months(Matcher time) {
    if (time.group("last") != null) {
      return time.group("last").equalsIgnoreCase("month") ? 1 : 0;
    }
    double count = count(time.group("count").toLowerCase(Locale.ROOT));
    count += time.group("half") == null ? 0 : 0.5;
    String unit = time.group("unit").toLowerCase(Locale.ROOT);
    return switch (unit.charAt(0)) {
      case 'd' -> (long) (count / DAYS_A_MONTH);
      case 'w' -> Math.round(count * 7 / DAYS_A_MONTH);
      case 'y' -> (long) (count * 12);
      default -> (long) count;
    };
  }

  private static double count(String word) {
    if (Character.isDigit(word.charAt(0))) {
      return Integer.parseInt(word);
    }
    if (word.contains("couple")) {
      return 2;
    }
    return word.startsWith("half") ? 0.5 : Math.max(1, COUNTS.indexOf(word));
  }
}
