package easewright.intake;

import easewright.deadline.Deadline;
import easewright.english.Break;
import easewright.english.Breaks;
import easewright.english.Denials;
import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Phrases;
import easewright.english.Speech;
import easewright.english.Spelling;
import easewright.english.Word;
import easewright.english.WordGaps;
import easewright.number.ReadingBounds;
import easewright.number.WordLists;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** What words stand for, and the taking apart of a text by it. */
final class Lexicon {
  private static final String MASK = "nothing";

  private final WordLists lists;
  private final ReadingBounds bounds;
  private final Speech speech;
  private final Breaks breaks;
  private final Set<String> parts;
  private final Set<String> places;
  private final Set<String> alone;
  private final Set<String> weak;
  private final Map<String, String> shortForms;
  private final Set<String> dropped;
  private final Phrases ideas;
  private final Phrases cues;
  private final Spelling spelling;

  /**
   * @param sayings every other phrase whose words may be misspelt
   */
  Lexicon(EverydayWords words, Collection<String> sayings, ReadingBounds bounds) {
    this.bounds = bounds;
    this.lists = new WordLists(words.reader());
    this.speech = new Speech(lists);
    this.breaks = new Breaks(lists);
    this.parts = Set.copyOf(words.parts().keySet());
    this.places = Set.copyOf(words.places().keySet());
    this.weak = Set.copyOf(words.weak());
    this.shortForms = words.shortForms();
    this.alone = Set.copyOf(words.alone());
    this.dropped = new HashSet<>();
    words.dropped().forEach(word -> speech.words(word).forEach(one -> dropped.add(one.plain())));
    this.ideas = new Phrases(speech, 3).add(words.parts()).add(words.places()).add(words.ideas());
    this.cues = Phrases.wordForWord(speech).add(words.cues());
    this.spelling = new Spelling(known(words, sayings));
  }

  private Set<String> known(EverydayWords words, Collection<String> sayings) {
    Set<String> known = new HashSet<>();
    Stream.of(
            words.parts(),
            words.places(),
            words.ideas(),
            words.cues(),
            words.circumstances(),
            words.measurements(),
            words.changes(),
            words.beliefs())
        .flatMap(phrases -> phrases.values().stream().flatMap(List::stream))
        .forEach(phrase -> speech.words(phrase).forEach(word -> known.add(word.plain())));
    Stream.of(words.garment(), words.dropped(), sayings)
        .flatMap(Collection::stream)
        .forEach(phrase -> speech.words(phrase).forEach(word -> known.add(word.plain())));
    return known;
  }

  ReadingBounds bounds() {
    return bounds;
  }

  WordLists lists() {
    return lists;
  }

  Speech speech() {
    return speech;
  }

  /** The names of the pieces of the garment. */
  Set<String> parts() {
    return parts;
  }

  boolean isPart(String name) {
    return parts.contains(name);
  }

  boolean isPlace(String name) {
    return places.contains(name);
  }

  /** Whether it names anything of the garment, the body or the matter, and is no bare word. */
  boolean isIdea(String name) {
    return !name.startsWith("=") && !isPart(name) && !isPlace(name);
  }

  /** Whether this idea tells enough without a piece or a place being named. */
  boolean standsAlone(String name) {
    return alone.contains(name);
  }

  /** Whether this idea is too common to be told of "it". */
  boolean isWeak(String name) {
    return weak.contains(name);
  }

  boolean isDropped(Word word) {
    return dropped.contains(word.plain()) || Character.isDigit(word.plain().charAt(0));
  }

  /** Takes a text apart. */
  Post read(String text) {
    Map<String, Optional<String>> mended = new HashMap<>(); // mending is slow, and words come again
    List<Word> words = speech.words(text).stream().map(word -> mended(word, mended)).toList();
    List<Break> breaks = this.breaks.in(text, words);
    int[] sentence = Breaks.numbered(breaks, Break.STOP);
    int[] breath = Breaks.numbered(breaks, Break.PAUSE);
    List<Mention> said = cues.in(words, breath);
    BitSet masked = new BitSet();
    for (Mention cue : said) {
      if (cue.name().equals(MASK)) {
        masked.set(cue.first(), cue.last() + 1);
      }
    }
    Mentions mentions = new Mentions(kept(ideas.in(words, breath), masked));
    Mentions meant = new Mentions(meant(said, words, breaks));
    boolean[] means = new boolean[words.size()];
    for (int i = 0; i < means.length; i++) {
      means[i] = !isDropped(words.get(i));
    }
    BitSet parts = new BitSet();
    mentions.stream().filter(one -> isPart(one.name())).forEach(one -> parts.set(one.first()));
    return new Post(
        text,
        words,
        sentence,
        Breaks.numbered(breaks, Break.JOIN),
        breaks,
        mentions,
        meant,
        masked,
        new WordGaps(breaks, means),
        new Denials(words, breaks, meant.named("no"), parts, means, lists),
        lists);
  }

  private Word mended(Word word, Map<String, Optional<String>> mended) {
    Deadline.check();
    String meant = shortForms.get(word.plain());
    if (meant != null) {
      return new Word(word.from(), word.to(), meant, speech.stem(meant));
    }
    return mended
        .computeIfAbsent(word.plain(), spelling::mended)
        .map(right -> new Word(word.from(), word.to(), right, speech.stem(right)))
        .orElse(word);
  }

  /** The longer phrase says it: "bust point" is no bust, "shoulder blade" no shoulder. */
  private static List<Mention> kept(List<Mention> all, BitSet masked) {
    List<Mention> kept = new ArrayList<>();
    Mentions places = new Mentions(all);
    for (Mention one : all) {
      boolean outdone =
          places.around(one.first(), one.first()).stream().anyMatch(other -> other.outdoes(one));
      if (!outdone && !masked.get(one.first()) && !masked.get(one.last())) {
        kept.add(one);
      }
    }
    return kept;
  }

  /** "No, the band doesn't roll": the first no denies nothing of its own. */
  private boolean isExclaimed(Mention cue, List<Word> words, List<Break> breaks) {
    int next = cue.last() + 1;
    return words.get(cue.first()).plain().equals("no")
        && cue.first() == cue.last()
        && (next >= words.size()
            || breaks.get(next).compareTo(Break.PAUSE) >= 0
            || lists.has("after an exclaimed no", words.get(next).plain()));
  }

  /** "Not only" holds no denial, and "no longer" is one cue, not the "no" of another. */
  private List<Mention> meant(List<Mention> cues, List<Word> words, List<Break> breaks) {
    List<Mention> kept = new ArrayList<>();
    Mentions places = new Mentions(cues);
    for (Mention one : cues) {
      if (isExclaimed(one, words, breaks)) {
        continue;
      }
      boolean inside =
          places.around(one.first(), one.first()).stream()
              .anyMatch(
                  other ->
                      other.words() > one.words()
                          && other.first() <= one.first()
                          && one.last() <= other.last()
                          && (other.name().equals("not a no")
                              || other.name().equals(MASK)
                              || other.name().equals(one.name())));
      if (!inside) {
        kept.add(one);
      }
    }
    return kept;
  }
}
