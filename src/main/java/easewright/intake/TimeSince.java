package easewright.intake;

import easewright.intake.Reading.TextRead;
import easewright.number.TextSpan;
import easewright.number.WordLists;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How long ago something was: "five months ago", "8 weeks after", "it'll be a year". */
final class TimeSince {
  private static final int FARTHEST = 25;

  /** A time tied to the event by a word weighs as much as one this many words nearer. */
  private static final int TIED = 20;

  private static final double DAYS_A_MONTH = 365.25 / 12;

  /** As far as is looked after a time for a word that ties it, in characters. */
  private static final int TIE_REACH = 16;

  private final Map<String, Double> counts = new HashMap<>();
  private final Map<String, String> units;
  private final Map<String, Double> last;
  private final Pattern time;
  private final Pattern tie;

  TimeSince(WordLists lists) {
    counts.putAll(lists.numbers("numbers in words"));
    counts.putAll(lists.numbers("counts of time"));
    this.units = lists.pairs("units of time");
    this.last = lists.numbers("months since last");
    String more = lists.oneOf("and half of it");
    this.time =
        Pattern.compile(
            "(?<![\\p{L}\\d.,])(?:(?<count>\\d{1,2}|"
                + WordLists.oneOf(counts.keySet())
                + ")(?: "
                + more
                + "|[.,]5)?(?:[ -]| "
                + lists.oneOf("between counts of time")
                + " )?(?:\\d{1,2} )?[ -]?(?<unit>"
                + WordLists.oneOf(units.keySet())
                + ")|(?<last>"
                + WordLists.oneOf(last.keySet())
                + "))(?![\\p{L}\\d])(?![ -]old)(?<half> "
                + more
                + ")?",
            Pattern.CASE_INSENSITIVE);
    this.tie =
        Pattern.compile(
            "\\s*" + lists.oneOf("after a time") + ".*", Pattern.CASE_INSENSITIVE | Pattern.DOTALL);
  }

  /** The time nearest to an event, in whole months. */
  Optional<TextRead> of(TextSpan event, Post post) {
    Matcher time = this.time.matcher(post.text());
    TextRead best = null;
    int nearest = Integer.MAX_VALUE;
    while (time.find()) {
      TextSpan span = new TextSpan(time.start(), time.end());
      String after =
          post.text().substring(time.end(), Math.min(post.text().length(), time.end() + TIE_REACH));
      boolean tied = time.group("last") != null || tie.matcher(after).matches();
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

  private long months(Matcher time) {
    if (time.group("last") != null) {
      return last.get(time.group("last").toLowerCase(Locale.ROOT)).longValue();
    }
    String word = time.group("count").toLowerCase(Locale.ROOT);
    double count = counts.containsKey(word) ? counts.get(word) : Integer.parseInt(word);
    count += time.group("half") == null ? 0 : 0.5;
    return switch (units.get(time.group("unit").toLowerCase(Locale.ROOT))) {
      case "day" -> (long) (count / DAYS_A_MONTH);
      case "week" -> Math.round(count * 7 / DAYS_A_MONTH);
      case "year" -> (long) (count * 12);
      default -> (long) count;
    };
  }
}
