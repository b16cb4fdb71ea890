package easewright.intake;

import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Speech;
import easewright.english.Word;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Finds the phrases of a list word for word, each with what it stands for. */
final class NamedPhrases {
  private final Map<String, List<Phrase>> byFirst = new HashMap<>();

  private record Phrase(String name, List<String> words) {}

  /**
   * @param names what each phrase stands for
   */
  NamedPhrases(Map<String, String> names, Speech speech) {
    names.forEach(
        (phrase, name) -> {
          List<String> words = speech.words(phrase).stream().map(Word::plain).toList();
          byFirst
              .computeIfAbsent(words.get(0), any -> new ArrayList<>())
              .add(new Phrase(name, words));
        });
  }

  /** Phrases that stand for themselves. */
  static NamedPhrases of(String list, Lexicon lexicon) {
    Map<String, String> names = new HashMap<>();
    lexicon.lists().words(list).forEach(one -> names.put(one, one));
    return new NamedPhrases(names, lexicon.speech());
  }

  /** Phrases of a list of "phrase as name". */
  static NamedPhrases ofPairs(String list, Lexicon lexicon) {
    return new NamedPhrases(lexicon.lists().pairs(list), lexicon.speech());
  }

  /** Every phrase within one sentence, in order; of those that begin at one word the longest. */
  Mentions in(Post post) {
    List<Mention> found = new ArrayList<>();
    for (int first = 0; first < post.words().size(); first++) {
      Mention longest = null;
      for (Phrase phrase : byFirst.getOrDefault(post.words().get(first).plain(), List.of())) {
        int last = first + phrase.words().size() - 1;
        if (stands(phrase.words(), first, post) && (longest == null || longest.last() < last)) {
          longest = new Mention(phrase.name(), first, last, phrase.words().size());
        }
      }
      if (longest != null) {
        found.add(longest);
      }
    }
    return new Mentions(found);
  }

  private static boolean stands(List<String> words, int at, Post post) {
    if (at + words.size() > post.words().size()
        || post.sentence()[at] != post.sentence()[at + words.size() - 1]) {
      return false;
    }
    for (int i = 0; i < words.size(); i++) {
      if (!post.words().get(at + i).plain().equals(words.get(i))) {
        return false;
      }
    }
    return true;
  }
}
