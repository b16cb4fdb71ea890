package easewright.english;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds phrases in a row of words. */
public final class Phrases {
  private final Speech speech;
  private final int mostBetween;
  private final boolean anyEnding;
  private final Map<String, List<Phrase>> byFirst = new HashMap<>();

  private record Phrase(String name, List<String> stems) {}

  /**
   * @param mostBetween how many other words may stand between two words of a phrase
   */
  public Phrases(Speech speech, int mostBetween) {
    this(speech, mostBetween, true);
  }

  private Phrases(Speech speech, int mostBetween, boolean anyEnding) {
    this.speech = speech;
    this.mostBetween = mostBetween;
    this.anyEnding = anyEnding;
  }

  /** Phrases that count only word for word: "tights" are not "tight". */
  public static Phrases wordForWord(Speech speech) {
    return new Phrases(speech, 0, false);
  }

  private String key(Word word) {
    return anyEnding ? word.stem() : word.plain();
  }

  public Phrases add(Map<String, List<String>> phrasesByName) {
    phrasesByName.forEach((name, phrases) -> phrases.forEach(phrase -> add(name, phrase)));
    return this;
  }

  public void add(String name, String phrase) {
    List<String> stems = speech.words(phrase).stream().map(this::key).toList();
    if (!stems.isEmpty()) {
      byFirst.computeIfAbsent(stems.get(0), any -> new ArrayList<>()).add(new Phrase(name, stems));
    }
  }

  /**
   * Every mention, by its first word.
   *
   * @param sentence the sentence of each word; no phrase reaches over the end of one
   */
  public List<Mention> in(List<Word> words, int[] sentence) {
    Set<Mention> found = new LinkedHashSet<>();
    for (int first = 0; first < words.size(); first++) {
      for (Phrase phrase : byFirst.getOrDefault(key(words.get(first)), List.of())) {
        int last = end(phrase.stems(), words, sentence, first);
        if (last >= 0) {
          found.add(new Mention(phrase.name(), first, last, phrase.stems().size()));
        }
      }
    }
    return new ArrayList<>(found);
  }

  private int end(List<String> stems, List<Word> words, int[] sentence, int first) {
    int at = first;
    for (int i = 1; i < stems.size(); i++) {
      int next = at + 1;
      while (next < words.size()
          && next - at <= mostBetween
          && !key(words.get(next)).equals(stems.get(i))) {
        next++;
      }
      if (next >= words.size()
          || sentence[next] != sentence[first]
          || !key(words.get(next)).equals(stems.get(i))) {
        return -1;
      }
      at = next;
    }
    return at;
  }
}
