package easewright.intake;

import easewright.intake.Reading.TextRead;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds what else bears on comfort and safety. */
final class Circumstance {
  private static final String OPERATED = "operated-recently";
  private static final int WORDS_NEAR = 25;
  private static final Pattern TIME =
      Pattern.compile(
          "(?<![\\p{L}\\d])(\\d{1,2}|a|an|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve) (month|week|year)s?(?![\\p{L}])",
          Pattern.CASE_INSENSITIVE);
  private static final List<String> COUNT =
      List.of(
          "", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
          "eleven", "twelve");

  private final Phrases phrases;

  Circumstance(EverydayWords words, Speech speech) {
    this.phrases = new Phrases(speech, 2).add(words.circumstances());
  }

  List<TextRead> in(Post post) {
    Map<String, TextRead> found = new LinkedHashMap<>();
    for (Mention one : phrases.in(post.words(), post.sentence())) {
      if (!isDenied(one, post) && !post.masked().get(one.first())) {
        found.putIfAbsent(
            one.name(), new TextRead(one.name(), post.span(one.first(), one.last()), 0.9));
      }
    }
    return hardest(found);
  }

  private static boolean isDenied(Mention one, Post post) {
    return post.cues("no").stream()
        .anyMatch(
            no ->
                no.last() < one.first()
                    && one.first() - no.last() <= 4
                    && post.clause()[no.first()] == post.clause()[one.first()]);
  }

  /** Who runs and does yoga needs what running asks for. */
  private static List<TextRead> hardest(Map<String, TextRead> found) {
    List<String> impacts = List.of("high-impact", "medium-impact", "low-impact");
    String hardest = impacts.stream().filter(found::containsKey).findFirst().orElse(null);
    List<TextRead> kept = new ArrayList<>(found.values());
    kept.removeIf(one -> impacts.contains(one.value()) && !one.value().equals(hardest));
    return kept;
  }

  /** How long ago the operation was, in whole months. */
  Optional<TextRead> monthsSinceOperation(Post post, List<TextRead> circumstances) {
    return circumstances.stream()
        .filter(one -> one.value().equals(OPERATED))
        .findFirst()
        .flatMap(operation -> near(post, operation.span()));
  }

  private static Optional<TextRead> near(Post post, Span operation) {
    Matcher time = TIME.matcher(post.text());
    TextRead best = null;
    int nearest = Integer.MAX_VALUE;
    while (time.find()) {
      Span span = new Span(time.start(), time.end());
      int distance = words(post, span, operation);
      if (distance <= WORDS_NEAR && distance < nearest) {
        nearest = distance;
        best = new TextRead(String.valueOf(months(time.group(1), time.group(2))), span, 0.8);
      }
    }
    return Optional.ofNullable(best);
  }

  private static int months(String count, String unit) {
    String word = count.toLowerCase(java.util.Locale.ROOT);
    int number =
        Character.isDigit(word.charAt(0))
            ? Integer.parseInt(word)
            : Math.max(1, COUNT.indexOf(word));
    return switch (unit.toLowerCase(java.util.Locale.ROOT)) {
      case "week" -> number * 7 / 30;
      case "year" -> number * 12;
      default -> number;
    };
  }

  private static int words(Post post, Span one, Span other) {
    int from = Math.min(one.to(), other.to());
    int to = Math.max(one.from(), other.from());
    return (int)
        post.words().stream().filter(word -> word.from() >= from && word.to() <= to).count();
  }
}
