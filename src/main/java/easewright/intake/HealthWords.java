package easewright.intake;

import easewright.deadline.Deadline;
import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.intake.Reading.ReadYourself;
import easewright.number.TextSpan;
import easewright.rulebook.DangerWords;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Reads dangers, circumstances and what a person must judge from groups of words that stand
 * together. A person's figure of speech, a machine or cloth is told by look-alikes; nothing else
 * but a plain "no" clears what was found.
 */
final class HealthWords implements DangerReader {
  private static final double SURE = 0.8;

  private static final int FEARED_REACH = 5;
  private static final int NO_REACH = 20;
  private static final String FIGURE = "figure";
  private static final String TIME = "never";

  private final WordGroups groups;
  private final Map<String, List<WordPattern>> dangers;
  private final Map<String, List<WordPattern>> circumstances;
  private final List<WordPattern> readYourself;

  /** What was found in one text. */
  private record Said(String id, WordPattern.Found found, TextSpan span) {}

  HealthWords(DangerWords words, Lexicon lexicon) {
    this.groups = new WordGroups(words, lexicon.speech(), lexicon.lists());
    this.dangers = patterns(words.dangers());
    this.circumstances = patterns(words.circumstances());
    this.readYourself = words.readYourself().stream().map(WordPattern::of).toList();
    Set<String> known = words.groups().keySet();
    Stream.of(dangers.values(), circumstances.values(), List.of(readYourself))
        .flatMap(Collection::stream)
        .flatMap(List::stream)
        .forEach(pattern -> mustBeKnown(pattern, known));
  }

  private static void mustBeKnown(WordPattern pattern, Set<String> known) {
    if (!known.containsAll(pattern.near())
        || !known.containsAll(pattern.anywhere())
        || !known.containsAll(pattern.unless())
        || !known.containsAll(pattern.never())) {
      throw new IllegalArgumentException("A pattern names no group of words: " + pattern);
    }
  }

  private static Map<String, List<WordPattern>> patterns(Map<String, List<String>> written) {
    Map<String, List<WordPattern>> patterns = new LinkedHashMap<>();
    written.forEach((id, all) -> patterns.put(id, all.stream().map(WordPattern::of).toList()));
    return patterns;
  }

  @Override
  public String name() {
    return "words";
  }

  @Override
  public List<Danger> in(Post post) {
    Bearer bearer = bearer(post);
    return said(dangers, post).stream()
        .filter(one -> whose(one, bearer) == Bearer.Whose.PERSON)
        .map(one -> new Danger(one.id(), one.span(), because(one), name(), SURE))
        .toList();
  }

  private static String because(Said one) {
    return because(one.found().pattern());
  }

  private static String because(WordPattern pattern) {
    return String.join(", ", pattern.near()).replace('-', ' ');
  }

  private static Bearer.Whose whose(Said one, Bearer bearer) {
    return bearer.of(
        one.id(),
        one.found().first(),
        one.found().last(),
        one.found().said().get(one.found().said().size() - 1).first());
  }

  /** Who or what the dangers of a post are said of. */
  Bearer bearer(Post post) {
    return new Bearer(groups.in(post), post);
  }

  /** Circumstances a text tells of, by the words that say so. */
  List<Mention> circumstances(Post post) {
    return said(circumstances, post).stream()
        .map(one -> new Mention(one.id(), one.found().first(), one.found().last(), 2))
        .toList();
  }

  /** Words of figures of speech, or beside what makes them one: none of them tells of a danger. */
  BitSet lookAlikes(Post post) {
    BitSet words = groups.lookAlikes(post);
    for (Mention one : groups.in(post).getOrDefault(FIGURE, List.of())) {
      for (int i = Math.max(0, one.first() - WordPattern.AROUND);
          i <= Math.min(post.words().size() - 1, one.last() + WordPattern.AROUND);
          i++) {
        words.set(i, words.get(i) || post.sentence()[i] == post.sentence()[one.first()]);
      }
    }
    return words;
  }

  private List<Said> said(Map<String, List<WordPattern>> patterns, Post post) {
    Map<String, List<Mention>> mentions = groups.in(post);
    List<Said> all = new ArrayList<>();
    patterns.forEach(
        (id, ways) -> {
          Deadline.check();
          ways.stream()
              .flatMap(way -> way.in(mentions, post).stream())
              .filter(found -> !isDenied(found, mentions, post))
              .findFirst()
              .ifPresent(
                  found -> all.add(new Said(id, found, post.span(found.first(), found.last()))));
        });
    return all;
  }

  /**
   * Words that may tell of a danger and were not read as one.
   *
   * @param read what was read as a danger
   */
  List<ReadYourself> readYourself(Post post, List<TextSpan> read) {
    Map<String, List<Mention>> mentions = groups.in(post);
    List<ReadYourself> all = new ArrayList<>();
    Bearer bearer = new Bearer(mentions, post);
    for (Said one : said(dangers, post)) {
      if (whose(one, bearer) == Bearer.Whose.DOUBT
          && read.stream().noneMatch(one.span()::touches)) {
        all.add(new ReadYourself(one.span(), because(one)));
      }
    }
    for (WordPattern way : readYourself) {
      Deadline.check();
      for (WordPattern.Found found : way.in(mentions, post)) {
        TextSpan span = post.span(found.first(), found.last());
        boolean known =
            read.stream().anyMatch(span::touches)
                || all.stream().anyMatch(other -> other.span().touches(span));
        if (!known && !isDenied(found, mentions, post)) {
          all.add(new ReadYourself(span, because(way)));
        }
      }
    }
    return all;
  }

  /** Whether a plain "no" reaches any of its words. */
  private boolean isDenied(
      WordPattern.Found found, Map<String, List<Mention>> mentions, Post post) {
    Mentions denials = new Mentions(mentions.getOrDefault(WordGroups.DENIAL, List.of()));
    boolean feared =
        denials.around(found.first() - FEARED_REACH, found.first()).stream()
            .anyMatch(
                one ->
                    one.last() < found.first()
                        && found.first() - one.last() <= FEARED_REACH
                        && post.sentence()[one.first()] == post.sentence()[found.first()]);
    if (feared) {
      return true;
    }
    List<Mention> exempt = mentions.getOrDefault(WordGroups.NO_DENIAL, List.of());
    for (Mention no : post.cues("no").around(found.first() - NO_REACH, found.last())) {
      if (no.last() < found.first() - NO_REACH || no.first() > found.last()) {
        continue; // before anything that takes longer
      }
      String word = post.words().get(no.last()).plain();
      boolean fails = post.lists().has("failing", word);
      boolean own = found.said().stream().anyMatch(one -> one.covers(no.first()));
      boolean empty = exempt.stream().anyMatch(one -> one.covers(no.first()));
      if (fails
          || own
          || empty
          || word.equals("without") && followsFailing(no, post)
          || word.equals(TIME) && no.first() > found.first()) {
        continue;
      }
      if (found.said().stream().anyMatch(one -> Polarity.reaches(no, one.first(), post))) {
        return true;
      }
    }
    return false;
  }

  /** "I can't lift it without pain" tells of pain. */
  private static boolean followsFailing(Mention without, Post post) {
    int sentence = post.sentenceOf(without.first()).first();
    return post.cues("no").from(sentence, without.first() - 1).stream()
        .anyMatch(
            no ->
                no.last() < without.first()
                    && post.lists().has("failing", post.words().get(no.last()).plain()));
  }
}
