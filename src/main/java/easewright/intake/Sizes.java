package easewright.intake;

import easewright.english.Break;
import easewright.english.Mention;
import easewright.english.Phrases;
import easewright.intake.Reading.TextRead;
import easewright.number.TextSpan;
import easewright.number.WordLists;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the size that was cut. */
final class Sizes {
  /** Kilometres, grams, hours and degrees are written like cups. */
  private static final String UNITS_TOO = "khgfc";

  /** "18k" is run, "36g" is worn. */
  private static final int LEAST_BESIDE_UNIT = 28;

  /** So near after "wash", 40C is warm water; in characters. */
  private static final int WASHED = 24;

  private static final int CUT_BEFORE = 3;
  private static final int CUT_AFTER = 2;

  private final Phrases cut;
  private final Map<String, String> letters;

  private final Pattern bandAndCup;
  private final Pattern letterSize;
  private final Pattern numberSize;

  Sizes(EverydayWords words, Lexicon lexicon) {
    WordLists lists = lexicon.lists();
    this.letters = lists.pairs("sizes in words");
    this.cut = new Phrases(lexicon.speech(), 3);
    words.cues().get("cut").forEach(phrase -> cut.add("cut", phrase));
    this.bandAndCup =
        ignoringCase(
            "(?<![\\p{L}\\d.,/:$£€])(?<band>\\d{1,3})(?<gap>[ -]?)(?<cup>"
                + lists.oneOf("cups")
                + ")(?![\\p{L}\\d'’])");
    String inWords = WordLists.oneOf(letters.keySet());
    this.letterSize =
        ignoringCase(
            "(?<![\\p{L}\\d])(?:"
                + lists.oneOf("before a size letter")
                + "[ :]{1,2}(?<short>x{0,3}s|m|x{0,3}l|[2-6]xl?|1x)(?![\\p{L}\\d'’-])|"
                + lists.oneOf("before a size in words")
                + " (?<word>"
                + inWords
                + ")(?= ?(?:$|[.,;:!?)\\n]|"
                + lists.oneOf("after a size in words")
                + "(?!\\p{L})))|(?<first>x{0,3}s|m|x{0,3}l|"
                + inWords
                + ") size(?!\\p{L}))");
    String region = "(?:" + lists.oneOf("regions of a size") + " )?";
    this.numberSize =
        ignoringCase(
            "(?<![\\p{L}\\d])(?<!"
                + lists.oneOf("no size after")
                + " )"
                + lists.oneOf("before a size number")
                + "[ :]{1,2}"
                + region
                + "(?<number>\\d{1,2})(?![\\p{L}\\d/]|[.,]\\d)(?! ?"
                + lists.oneOf("no size before")
                + ")");
  }

  private static Pattern ignoringCase(String expression) {
    return Pattern.compile(expression, Pattern.CASE_INSENSITIVE);
  }

  /** A size found. */
  record Size(String name, TextSpan span, boolean letterOnly) {}

  /** Every size named, cut or not: their numbers measure nothing. */
  List<Size> all(String text) {
    List<Size> sizes = new ArrayList<>();
    Matcher pair = bandAndCup.matcher(text);
    while (pair.find()) {
      int band = Integer.parseInt(pair.group("band"));
      boolean article = pair.group("cup").equals("a") && pair.group("gap").equals(" ");
      boolean unit = band < LEAST_BESIDE_UNIT && isUnit(pair.group("cup").charAt(0));
      if (isBand(band) && !article && !unit) {
        String name = band + pair.group("cup").toUpperCase(Locale.ROOT);
        sizes.add(new Size(name, new TextSpan(pair.start(), pair.end()), false));
      }
    }
    Matcher letter = letterSize.matcher(text);
    while (letter.find()) {
      String name =
          letter.group("short") != null ? "short" : letter.group("word") != null ? "word" : "first";
      String size = letter.group(name).toUpperCase(Locale.ROOT);
      TextSpan span = new TextSpan(letter.start(name), letter.end(name));
      sizes.add(new Size(letters.getOrDefault(size, size), span, true));
    }
    Matcher number = numberSize.matcher(text);
    while (number.find()) {
      if (Integer.parseInt(number.group("number")) < 60) { // a needle from 60 on
        TextSpan span = new TextSpan(number.start("number"), number.end("number"));
        sizes.add(new Size(number.group("number"), span, true));
      }
    }
    return sizes;
  }

  /** Bands by inches and dress sizes are even; those by centimetres go by fives (EN 13402-3). */
  private static boolean isBand(int band) {
    return band >= 4 && band <= 60 && band % 2 == 0 || band >= 55 && band <= 150 && band % 5 == 0;
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
    double confidence = bestScore >= CUT_BEFORE ? 0.95 : 0.7;
    return Optional.ofNullable(best)
        .map(size -> new TextRead(size.name(), size.span(), confidence));
  }

  private int score(Size size, Post post, List<Mention> cuts) {
    int at = Whereabouts.wordAt(post, size.span().from());
    boolean before =
        cuts.stream()
            .anyMatch(cue -> cue.first() < at && at - cue.last() <= 5 && together(post, cue, at));
    boolean after =
        cuts.stream()
            .anyMatch(cue -> cue.first() > at && cue.first() - at <= 3 && together(post, cue, at));
    boolean labelled =
        at > 0 && post.words().get(at - 1).stem().equals("size")
            || before(size, post, "size: ".length()).strip().endsWith("size");
    int score = (before ? CUT_BEFORE : 0) + (after ? CUT_AFTER : 0) + (labelled ? 2 : 0);
    score += size.letterOnly() || isAlsoUnit(size, post) ? 0 : 1;
    boolean planned = cue("not yet", post, at);
    boolean instead = planned && isInstead(post, at);
    return score
        + (instead ? CUT_BEFORE : 0)
        - (planned && !instead || cue("might", post, at) ? CUT_BEFORE + 1 : 0)
        - (cue("worn elsewhere", post, at) && !before ? CUT_BEFORE : 0)
        - (post.cueInSentence("elsewhere", at) && !before ? CUT_BEFORE + 1 : 0);
  }

  private static boolean together(Post post, Mention cue, int at) {
    return post.sentence()[cue.first()] == post.sentence()[at];
  }

  private static boolean cue(String name, Post post, int at) {
    return post.cues(name).stream()
        .anyMatch(
            cue ->
                cue.first() <= at
                    && post.sentence()[cue.first()] == post.sentence()[at]
                    && post.strongest(cue.first(), at).compareTo(Break.JOIN) <= 0);
  }

  /** "I'm cutting a 36B instead of the 36C": the second is what there is now. */
  private static boolean isInstead(Post post, int at) {
    for (int i = Math.max(0, at - 4); i < at; i++) {
      if (post.words().get(i).plain().matches("instead|insted")) {
        return true;
      }
    }
    return false;
  }

  private static boolean isAlsoUnit(Size size, Post post) {
    char last = post.text().charAt(size.span().to() - 1);
    return isUnit(last) || before(size, post, WASHED).matches("(?is).*\\bwash.*");
  }

  /** At most so many characters before a size. */
  private static String before(Size size, Post post, int most) {
    return post.text().substring(Math.max(0, size.span().from() - most), size.span().from());
  }

  private static boolean isUnit(char letter) {
    return UNITS_TOO.indexOf(letter) >= 0;
  }
}
