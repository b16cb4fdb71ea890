package easewright.intake;

import easewright.english.Mention;
import easewright.intake.Reading.TextRead;
import easewright.number.TextSpan;
import easewright.number.WordLists;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Finds what else bears on comfort and safety. */
final class CircumstanceFinder {
  private static final String OPERATED = "operated-recently";
  private static final String GROWING = "growing";
  private static final String NURSING = "nursing";
  private static final String PREGNANT = "pregnant";
  private static final List<String> IMPACTS = List.of("high-impact", "medium-impact", "low-impact");

  /** What counts long after it is over: skin and lymph vessels stay as they are. */
  private static final Set<String> LASTING =
      Set.of("lymphoedema-or-nodes-removed", "radiotherapy", "shingles", "hurt-ribs");

  private static final double LESS_SURE = 0.8;

  /** How many words a "no" reaches. */
  private static final int REACH = 4;

  private final ExactPhrases phrases;
  private final Pattern young;
  private final TimeSince timeSince;
  private final NursingOver over;

  CircumstanceFinder(EverydayWords words, Lexicon lexicon) {
    this.phrases = new ExactPhrases(words.circumstances(), lexicon.speech());
    this.young = young(lexicon.lists());
    this.timeSince = new TimeSince(lexicon.lists());
    this.over = new NursingOver(lexicon);
  }

  /** "My 14-year-old", "she's 12", "my daughter, who is 13". */
  private static Pattern young(WordLists lists) {
    String age = lists.oneOf("ages of the young");
    String being = lists.oneOf("who is of an age");
    String girls = lists.oneOf("girls of an age");
    String nearly = "(?:" + lists.oneOf("nearly of an age") + " )?";
    return Pattern.compile(
        "(?<![\\p{L}\\d.,])(?:"
            + age
            + "[ -]?"
            + lists.oneOf("years old").replace(" ", "[ -]?")
            + "(?![\\p{L}\\d])(?![ -]"
            + lists.oneOf("others of an age")
            + ")|(?:"
            + being
            + "|"
            + girls
            + "(?:'s| \\(|,|,? "
            + lists.oneOf("girls are")
            + ")?) "
            + nearly
            + "\\(?"
            + age
            + "(?![ -]?(?:[\\p{L}\\d%\"]|\\.\\d|,\\d|/))|(?:"
            + being
            + "|"
            + girls
            + " (?:is|turned)) "
            + nearly
            + age
            + " "
            + lists.oneOf("after an age")
            + "(?![\\p{L}\\d]))",
        Pattern.CASE_INSENSITIVE);
  }

  /**
   * The circumstances of a text.
   *
   * @param alsoFound those another reader found
   * @param lookAlikes words of figures of speech, which tell of none
   */
  List<TextRead> in(Post post, List<Mention> alsoFound, BitSet lookAlikes, Bearer bearer) {
    Map<String, TextRead> found = new LinkedHashMap<>();
    boolean nursing = tellsNursing(post, alsoFound);
    for (Mention one : phrases.in(post)) {
      if (!isDenied(one, nursing, post) && (isOfUse(one) || isOfSomeone(one, lookAlikes, bearer))) {
        found.putIfAbsent(
            one.name(), new TextRead(one.name(), post.span(one.first(), one.last()), 0.9));
      }
    }
    Matcher age = young.matcher(post.text());
    if (age.find()) {
      TextSpan span = new TextSpan(age.start(), age.end());
      found.putIfAbsent(GROWING, new TextRead(GROWING, span, 0.85));
    }
    List<Mention> others =
        alsoFound.stream().filter(one -> isOfSomeone(one, lookAlikes, bearer)).toList();
    among(others, nursing, post).forEach(one -> found.putIfAbsent(one.value(), one));
    return hardest(found);
  }

  /** Those that bear on safety, whatever else a text is about. */
  static List<TextRead> onSafety(List<TextRead> all) {
    return all.stream().filter(one -> !IMPACTS.contains(one.value())).toList();
  }

  private static boolean isOfUse(Mention one) {
    return IMPACTS.contains(one.name());
  }

  /** "My machine had surgery" and "a pregnant pause" tell of nobody. */
  private static boolean isOfSomeone(Mention one, BitSet lookAlikes, Bearer bearer) {
    return !lookAlikes.get(one.first()) && !bearer.isOfThing(one);
  }

  /** Those of what was found that are meant of now. */
  private List<TextRead> among(List<Mention> found, boolean nursing, Post post) {
    return found.stream()
        .filter(one -> !isDenied(one, nursing, post))
        .map(one -> new TextRead(one.name(), post.span(one.first(), one.last()), LESS_SURE))
        .toList();
  }

  /** Whether the writer nurses now. */
  private boolean tellsNursing(Post post, List<Mention> alsoFound) {
    return Stream.concat(phrases.in(post).stream(), alsoFound.stream())
        .anyMatch(one -> one.name().equals(NURSING) && !isDenied(one, false, post));
  }

  /**
   * "I stopped nursing", "when I was pregnant", "not allergic to rubber".
   *
   * @param nursing whether the writer nurses now, so that "in pregnancy" tells of before
   */
  private boolean isDenied(Mention one, boolean nursing, Post post) {
    if (nursing && one.name().equals(PREGNANT) && isWithin("over while nursing", one, post)) {
      return true;
    }
    boolean no =
        post.cues("no").around(one.first() - REACH, one.first() - 1).stream()
            .anyMatch(
                cue ->
                    cue.last() < one.first()
                        && one.first() - cue.last() <= REACH
                        && post.clause()[cue.first()] == post.clause()[one.first()]);
    if (one.name().equals(NURSING)) {
      return no || !over.goesOn(post) && (isBehind(one, post) || over.isOver(one, post));
    }
    return no || !LASTING.contains(one.name()) && isBehind(one, post);
  }

  private static boolean isBehind(Mention one, Post post) {
    return isWithin("over by now", one, post)
        || post.cues("behind me").around(one.first() - REACH, one.first() - 1).stream()
            .anyMatch(
                cue ->
                    post.sentence()[cue.first()] == post.sentence()[one.first()]
                        && cue.last() < one.first()
                        && one.first() - cue.last() <= REACH)
        || post.cues("behind me").from(one.last() + 1, one.last() + 2).stream()
            .anyMatch(cue -> post.clause()[cue.first()] == post.clause()[one.first()]);
  }

  /** Whether it is part of a cue: "since my pregnancy". */
  private static boolean isWithin(String cue, Mention one, Post post) {
    return post.cues(cue).around(one.first(), one.last()).stream()
        .anyMatch(said -> said.first() <= one.last() && said.last() >= one.first());
  }

  /** Who runs and does yoga needs what running asks for. */
  private static List<TextRead> hardest(Map<String, TextRead> found) {
    String hardest = IMPACTS.stream().filter(found::containsKey).findFirst().orElse(null);
    List<TextRead> kept = new ArrayList<>(found.values());
    kept.removeIf(one -> IMPACTS.contains(one.value()) && !one.value().equals(hardest));
    return kept;
  }

  /** How long ago the operation was, in whole months. */
  Optional<TextRead> monthsSinceOperation(Post post, List<TextRead> circumstances) {
    return circumstances.stream()
        .filter(one -> one.value().equals(OPERATED))
        .findFirst()
        .flatMap(operation -> timeSince.of(operation.span(), post));
  }
}
