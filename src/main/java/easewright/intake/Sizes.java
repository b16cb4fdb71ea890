package easewright.intake;

import easewright.intake.Reading.TextRead;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the size that was cut. */
final class Sizes {
  private static final Pattern BAND_AND_CUP =
      Pattern.compile(
          "(?<![\\p{L}\\d.,/])(\\d{1,3}) ?(a{1,3}|b{1,2}|c|d{1,4}|e{1,2}|f{1,2}|g{1,2}|h{1,2}|[jk])(?![\\p{L}\\d'’])",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern LETTER =
      Pattern.compile(
          "(?:size|the|a|an) (xxs|xs|s|m|l|xl|xxl|xxxl|[2-5]xl?|small|medium|large|extra large)(?![\\p{L}'’])",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern NUMBER =
      Pattern.compile("size (\\d{1,2})(?![\\p{L}\\d.,/])", Pattern.CASE_INSENSITIVE);

  private final Phrases cut;

  Sizes(EverydayWords words, Speech speech) {
    this.cut = new Phrases(speech, 3);
    words.cues().get("cut").forEach(phrase -> cut.add("cut", phrase));
  }

  /** A size found. */
  record Size(String name, Span span, boolean letterOnly) {}

  /** Every size named, cut or not: their numbers measure nothing. */
  List<Size> all(String text) {
    List<Size> sizes = new ArrayList<>();
    Matcher pair = BAND_AND_CUP.matcher(text);
    while (pair.find()) {
      int band = Integer.parseInt(pair.group(1));
      boolean article = pair.group(2).equals("a") && text.charAt(pair.end() - 2) == ' ';
      if (band >= 4 && band <= 150 && !article) {
        sizes.add(
            new Size(
                band + pair.group(2).toUpperCase(Locale.ROOT),
                new Span(pair.start(), pair.end()),
                false));
      }
    }
    Matcher letter = LETTER.matcher(text);
    while (letter.find()) {
      String name = letter.group(1).toUpperCase(Locale.ROOT);
      String shortName =
          switch (name) {
            case "SMALL" -> "S";
            case "MEDIUM" -> "M";
            case "LARGE" -> "L";
            case "EXTRA LARGE" -> "XL";
            default -> name;
          };
      sizes.add(new Size(shortName, new Span(letter.start(1), letter.end(1)), true));
    }
    Matcher number = NUMBER.matcher(text);
    while (number.find()) {
      sizes.add(new Size(number.group(1), new Span(number.start(1), number.end(1)), true));
    }
    return sizes;
  }

  /** The size that was cut, if one was. */
  Optional<TextRead> cut(Post post, List<Size> all) {
    List<Mention> cuts = cut.in(post.words(), post.sentence());
    Size best = null;
    int bestScore = 0;
    for (Size size : all) {
      int score = score(size, post, cuts);
      if (score > bestScore) {
        best = size;
        bestScore = score;
      }
    }
    double confidence = bestScore >= 3 ? 0.95 : 0.7;
    return Optional.ofNullable(best)
        .map(size -> new TextRead(size.name(), size.span(), confidence));
  }

  private int score(Size size, Post post, List<Mention> cuts) {
    int word = 0;
    for (int i = 0; i < post.words().size(); i++) {
      if (post.words().get(i).from() <= size.span().from()) {
        word = i;
      }
    }
    int at = word;
    boolean before =
        cuts.stream()
            .anyMatch(
                cue ->
                    cue.first() < at
                        && at - cue.last() <= 5
                        && post.sentence()[cue.first()] == post.sentence()[at]);
    boolean after =
        cuts.stream()
            .anyMatch(
                cue ->
                    cue.first() > at
                        && cue.first() - at <= 3
                        && post.sentence()[cue.first()] == post.sentence()[at]);
    boolean labelled =
        at > 0 && post.words().get(at - 1).stem().equals("size")
            || post.text().substring(0, size.span().from()).strip().endsWith("size");
    boolean elsewhere = post.cueInSentence("elsewhere", at);
    boolean thought =
        post.cues("might").stream()
            .anyMatch(cue -> post.clause()[cue.first()] == post.clause()[at] && cue.first() < at);
    int score = (before ? 3 : 0) + (after ? 2 : 0) + (labelled ? 2 : 0);
    score += size.letterOnly() ? 0 : 1;
    return score - (elsewhere ? 4 : 0) - (thought ? 3 : 0);
  }
}
