package easewright.english;

import easewright.number.WordLists;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Tells that a text is not English, by its most common words. Immutable and safe to share. */
public final class OtherLanguage {
  /** Fewer words of a language than these tell nothing: names of dishes, a greeting. */
  private static final int LEAST_DIFFERENT = 4;

  /** At least one word in so many is one of the language. */
  private static final int ONE_IN = 5;

  private final Speech speech;
  private final Map<String, Set<String>> words = new LinkedHashMap<>();
  private final Set<String> english;

  /** Knows the languages of these lists. */
  public OtherLanguage(WordLists lists) {
    this.speech = new Speech(lists);
    this.english = Set.copyOf(lists.words("words of English"));
    for (String language : lists.words("other languages")) {
      words.put(language, new HashSet<>(lists.words("words of " + language)));
    }
  }

  /** The language of a text in English words, such as "German"; empty if it may be English. */
  public Optional<String> of(String text) {
    List<String> said = speech.words(text).stream().map(Word::plain).toList();
    long ours = said.stream().filter(english::contains).count();
    String best = null;
    long most = 0;
    for (Map.Entry<String, Set<String>> one : words.entrySet()) {
      List<String> theirs =
          said.stream().filter(one.getValue()::contains).filter(w -> !english.contains(w)).toList();
      if (theirs.size() > most && theirs.stream().distinct().count() >= LEAST_DIFFERENT) {
        best = one.getKey();
        most = theirs.size();
      }
    }
    return most > ours && most * ONE_IN >= said.size() ? Optional.of(best) : Optional.empty();
  }
}
