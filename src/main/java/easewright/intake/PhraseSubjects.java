package easewright.intake;

import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.english.WordGaps;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Decides of which piece of the garment a phrase was said. */
final class PhraseSubjects {
  private final Lexicon lexicon;
  private final Set<String> anywhere;
  private final Map<String, Set<String>> partsOf = new HashMap<>();
  private final Map<String, Set<String>> placesOf = new HashMap<>();

  /**
   * @param anywhere what is meant wherever it is said, whichever piece is named beside it
   */
  PhraseSubjects(List<Saying> all, Lexicon lexicon, Set<String> anywhere) {
    this.lexicon = lexicon;
    this.anywhere = anywhere;
    for (Saying saying : all) {
      for (String element : saying.elements()) {
        if (lexicon.isPart(element)) {
          partsOf.computeIfAbsent(saying.of(), any -> new HashSet<>()).add(element);
        }
        if (lexicon.isPlace(element)) {
          placesOf.computeIfAbsent(saying.of(), any -> new HashSet<>()).add(element);
        }
      }
    }
  }

  /** Whether a piece or place of the sign was just named. */
  boolean isOwnNear(Match match, Post post) {
    String of = match.saying().of();
    int head = match.head();
    int sentence = post.sentence()[head];
    return post.mentions(sentence - 1, sentence).stream()
        .filter(
            one ->
                partsOf.getOrDefault(of, Set.of()).contains(one.name())
                    || placesOf.getOrDefault(of, Set.of()).contains(one.name()))
        .anyMatch(
            one ->
                post.clause()[one.first()] == post.clause()[head]
                    || post.sentence()[one.first()] == sentence
                        && lexicon.isPart(one.name())
                        && one.last() < head
                    || post.sentence()[one.first()] == sentence - 1
                        && lexicon.isPart(one.name())
                        && isPronounNear(head, post));
  }

  /** Whether a pronoun stands near a word. */
  static boolean isPronounNear(int head, Post post) {
    for (int i = Math.max(0, head - 7); i <= Math.min(post.words().size() - 1, head + 3); i++) {
      if (post.sentence()[i] == post.sentence()[head]
          && post.lists().has("pronouns", post.words().get(i).plain())) {
        return true;
      }
    }
    return false;
  }

  /** Whether "it" may mean this part: named in the last sentence before that names any. */
  boolean isTopic(String part, Mention at, Post post) {
    Stretch clause = post.clauseOf(at.first());
    if (!parts(post, clause.first(), clause.last(), Integer.MAX_VALUE).isEmpty()) {
      return false;
    }
    int sentence = post.sentence()[at.first()];
    for (int one = sentence; one >= Math.max(0, sentence - 2); one--) {
      int from = WordGaps.firstOf(one, post.sentence());
      int to = Math.min(at.first(), WordGaps.firstOf(one + 1, post.sentence())) - 1;
      List<String> named = parts(post, from, to, at.first());
      if (!named.isEmpty()) {
        return named.contains(part);
      }
    }
    return false;
  }

  /** A complaint does not reach past another piece: "band is fine, straps dig in". */
  boolean isOfAnotherPart(Match match, Post post) {
    if (anywhere.contains(match.saying().of())) {
      return false;
    }
    Set<String> own = partsOf.getOrDefault(match.saying().of(), Set.of());
    List<String> named = match.saying().elements();
    Mention part =
        match.said().stream().filter(one -> lexicon.isPart(one.name())).findFirst().orElse(null);
    int head = match.head();
    Stretch clause = post.clauseOf(head);
    for (String other : lexicon.parts()) {
      if (named.contains(other)) {
        continue;
      }
      Mentions all = post.mentions().named(other);
      if (part == null) {
        if (!own.contains(other)
            && !own.isEmpty()
            && isNamed(all, clause.first(), clause.last(), Integer.MAX_VALUE, match)) {
          return true;
        }
      } else if (isNamed(all, part.last() + 1, head - 1, head, match)
          || part.first() > head && isNamed(all, clause.first(), head - 1, head, match)) {
        return true;
      }
    }
    return false;
  }

  /** Whether a piece is named from one word to another, before a word and outside of a match. */
  private static boolean isNamed(Mentions piece, int from, int to, int before, Match match) {
    return piece.from(from, to).stream()
        .anyMatch(
            one ->
                one.last() < before
                    && match.said().stream().noneMatch(said -> said.covers(one.first())));
  }

  /** The pieces of the garment named from one word to another and ending before a word. */
  private List<String> parts(Post post, int from, int to, int before) {
    return lexicon.parts().stream()
        .filter(
            one ->
                post.mentions().named(one).from(from, to).stream()
                    .anyMatch(place -> place.last() < before))
        .toList();
  }
}
