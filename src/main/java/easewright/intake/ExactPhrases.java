package easewright.intake;

import easewright.english.Mention;
import easewright.english.Speech;
import easewright.english.Word;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds phrases exactly as they stand, endings and all: who is nursing says so, a nurse does not.
 * "..." in a phrase leaves room for up to three words.
 */
final class ExactPhrases {
  private static final int ROOM = 3;
  private static final int LONGEST_SHORT = 6;

  private final Map<String, List<Phrase>> byFirst = new HashMap<>();

  private record Phrase(String name, List<List<String>> pieces) {}

  ExactPhrases(Map<String, List<String>> phrasesByName, Speech speech) {
    phrasesByName.forEach((name, phrases) -> phrases.forEach(one -> add(name, one, speech)));
  }

  private void add(String name, String phrase, Speech speech) {
    List<List<String>> pieces = new ArrayList<>();
    for (String piece : phrase.split("\\.\\.\\.")) {
      pieces.add(speech.words(piece).stream().map(Word::plain).toList());
    }
    byFirst
        .computeIfAbsent(pieces.get(0).get(0), any -> new ArrayList<>())
        .add(new Phrase(name, pieces));
  }

  /**
   * Every mention within one sentence, by its first word; words that mean nothing here left out.
   */
  List<Mention> in(Post post) {
    List<Mention> found = new ArrayList<>();
    for (int first = 0; first < post.words().size(); first++) {
      for (Phrase phrase : byFirst.getOrDefault(post.words().get(first).plain(), List.of())) {
        int last = end(phrase, post, first);
        if (last >= 0 && post.sentence()[last] == post.sentence()[first]) {
          found.add(new Mention(phrase.name(), first, last, last - first + 1));
        }
      }
    }
    found.removeIf(one -> one.words() == 1 && !isSpelledRight(post, one.first()));
    found.removeIf(one -> post.masked().get(one.first(), one.last() + 1).cardinality() > 0);
    return found;
  }

  /** A short word alone is not taken for a slip of another: hiding is no hiking. */
  private static boolean isSpelledRight(Post post, int word) {
    Word one = post.words().get(word);
    String written = post.text().substring(one.from(), one.to());
    return one.plain().length() > LONGEST_SHORT || written.equalsIgnoreCase(one.plain());
  }

  private static int end(Phrase phrase, Post post, int first) {
    int at = first;
    for (int i = 0; i < phrase.pieces().size(); i++) {
      List<String> piece = phrase.pieces().get(i);
      int skipped = 0;
      while (i > 0 && skipped < ROOM && !stands(piece, post, at)) {
        at++;
        skipped++;
      }
      if (!stands(piece, post, at)) {
        return -1;
      }
      at += piece.size();
    }
    return at - 1;
  }

  private static boolean stands(List<String> piece, Post post, int at) {
    for (int i = 0; i < piece.size(); i++) {
      if (at + i >= post.words().size() || !post.words().get(at + i).plain().equals(piece.get(i))) {
        return false;
      }
    }
    return true;
  }
}
