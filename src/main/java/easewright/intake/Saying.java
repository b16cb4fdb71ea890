package easewright.intake;

import easewright.english.Mention;
import easewright.english.Word;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * A phrase of the rule book taken apart into what must be said for it to be meant.
 *
 * @param of id of the sign, change or cause it speaks of
 * @param phrase as it stands in the book
 * @param elements names of parts, places and ideas, and "=stem" for other words
 * @param denies whether the phrase itself holds a "no": "doesn't lie flat"
 */
record Saying(String of, String phrase, List<String> elements, boolean denies) {

  /** Takes a phrase apart. */
  static Saying of(String id, String phrase, Lexicon lexicon) {
    Post post = lexicon.read(phrase);
    Set<String> elements = new LinkedHashSet<>();
    for (int i = 0; i < post.words().size(); i++) {
      elements.addAll(at(i, post, lexicon));
    }
    long noes =
        post.cues("no").stream()
            .filter(no -> post.mentions().stream().noneMatch(one -> one.covers(no.first())))
            .count();
    boolean denies = noes % 2 == 1;
    return new Saying(id, phrase, new ArrayList<>(elements), denies);
  }

  private static List<String> at(int i, Post post, Lexicon lexicon) {
    List<Mention> here = post.mentions().stream().filter(one -> one.covers(i)).toList();
    if (!here.isEmpty()) {
      Mention longest =
          here.stream()
              .filter(one -> one.first() == i)
              .reduce((a, b) -> b.words() > a.words() ? b : a)
              .orElse(null);
      return longest == null ? List.of() : List.of(longest.name());
    }
    Word word = post.words().get(i);
    boolean cue = post.cues("no").stream().anyMatch(no -> no.covers(i));
    return cue || lexicon.isDropped(word) || post.masked().get(i)
        ? List.of()
        : List.of("=" + word.stem());
  }

  /** What it comes down to: phrases of one sense cannot be told apart in a text. */
  String sense() {
    return new TreeSet<>(elements) + (denies ? " not so" : "");
  }

  /** Whether it says what is the matter, and not only where. */
  boolean saysWhat(Lexicon lexicon) {
    return elements.stream().anyMatch(one -> !lexicon.isPart(one) && !lexicon.isPlace(one));
  }
}
