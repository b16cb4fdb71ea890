package easewright.intake;

import easewright.deadline.Deadline;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds the book's phrases in a text, whatever their order and the words between. */
final class PhraseFinder {
  /** Farther apart, words of one sentence speak of different things. */
  private static final int FARTHEST = 5;

  /** The catalog's own phrases come first in every list; there are at most this many. */
  private static final int FIRST_PHRASES = 5;

  private static final double EXACT = 0.95;
  private static final double TAKEN_OVER = 0.15;
  private static final double PER_WORD_BETWEEN = 0.03;

  private final Lexicon lexicon;
  private final List<Saying> all;
  private final Set<String> anywhere;
  private final Map<String, List<Saying>> byRarest = new HashMap<>();
  private final Map<String, Set<String>> partsOf = new HashMap<>();
  private final Map<String, Set<String>> placesOf = new HashMap<>();
  private final Map<String, Double> weights = new HashMap<>();

  PhraseFinder(Map<String, List<String>> phrasesById, Lexicon lexicon) {
    this(plain(phrasesById, lexicon), lexicon, 1, Set.of());
  }

  /**
   * @param anywhere what is meant wherever it is said, whichever piece is named beside it
   */
  static PhraseFinder meantAnywhere(
      Map<String, List<String>> phrasesById, Lexicon lexicon, Set<String> anywhere) {
    return new PhraseFinder(plain(phrasesById, lexicon), lexicon, 1, anywhere);
  }

  /** Phrases that may say several things at once, each of two words or more. */
  static PhraseFinder sayingSeveral(Map<String, List<String>> phrasesById, Lexicon lexicon) {
    List<Saying> all = new ArrayList<>();
    phrasesById.forEach(
        (id, phrases) -> phrases.forEach(phrase -> all.add(Saying.of(id, phrase, lexicon))));
    return new PhraseFinder(all, lexicon, 2, Set.of());
  }

  private PhraseFinder(List<Saying> all, Lexicon lexicon, int least, Set<String> anywhere) {
    this.lexicon = lexicon;
    this.anywhere = anywhere;
    this.all = all.stream().filter(one -> isEnough(one, least)).toList();
    Map<String, Integer> counts = new HashMap<>();
    all.forEach(one -> one.elements().forEach(element -> counts.merge(element, 1, Integer::sum)));
    counts.forEach(
        (element, count) -> weights.put(element, Math.log(1 + all.size() / (double) count)));
    for (Saying saying : this.all) {
      if (saying.saysWhat(lexicon)) {
        String rarest =
            saying.elements().stream()
                .filter(one -> !lexicon.isPart(one))
                .max(Comparator.comparingDouble(weights::get))
                .orElseThrow();
        byRarest.computeIfAbsent(rarest, any -> new ArrayList<>()).add(saying);
      }
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

  private boolean isEnough(Saying saying, int least) {
    return saying.elements().size() >= least
        || saying.denies()
        || saying.elements().stream().anyMatch(lexicon::standsAlone);
  }

  List<Saying> all() {
    return all;
  }

  /**
   * Each phrase once. What two signs would be known by tells neither, unless it is among the first
   * phrases of one alone.
   */
  private static List<Saying> plain(Map<String, List<String>> phrasesById, Lexicon lexicon) {
    Map<String, Map<String, Saying>> bySense = new LinkedHashMap<>();
    Map<String, Map<String, Saying>> firstBySense = new HashMap<>();
    phrasesById.forEach(
        (id, phrases) -> {
          for (int i = 0; i < phrases.size(); i++) {
            Saying saying = Saying.of(id, phrases.get(i), lexicon);
            bySense
                .computeIfAbsent(saying.sense(), any -> new LinkedHashMap<>())
                .putIfAbsent(id, saying);
            if (i < FIRST_PHRASES) {
              firstBySense
                  .computeIfAbsent(saying.sense(), any -> new LinkedHashMap<>())
                  .putIfAbsent(id, saying);
            }
          }
        });
    List<Saying> kept = new ArrayList<>();
    bySense.forEach(
        (sense, byId) -> {
          Map<String, Saying> first = firstBySense.getOrDefault(sense, Map.of());
          if (byId.size() == 1) {
            kept.addAll(byId.values());
          } else if (first.size() == 1) {
            kept.addAll(first.values());
          }
        });
    return kept;
  }

  /** Every phrase found, those outdone by a fuller one left out. */
  List<Match> in(Post post) {
    Map<String, Mentions> said = said(post);
    List<Match> all = new ArrayList<>();
    said.forEach(
        (element, places) ->
            byRarest
                .getOrDefault(element, List.of())
                .forEach(
                    saying ->
                        places.stream().forEach(at -> add(all, saying, element, at, said, post))));
    all.sort(Comparator.comparingInt(Match::first).thenComparing(m -> m.saying().phrase()));
    Map<Integer, List<Match>> byWord = new HashMap<>();
    for (Match one : all) {
      one.words().stream()
          .forEach(word -> byWord.computeIfAbsent(word, any -> new ArrayList<>()).add(one));
    }
    // What outdoes a match says all its words, so its first as well.
    return all.stream()
        .filter(one -> byWord.get(one.first()).stream().noneMatch(other -> other.outdoes(one)))
        .toList();
  }

  /** What is said, and where: parts, places, ideas and other words with a meaning of their own. */
  Map<String, Mentions> said(Post post) {
    Map<String, List<Mention>> said = new HashMap<>();
    post.mentions()
        .forEach(one -> said.computeIfAbsent(one.name(), any -> new ArrayList<>()).add(one));
    for (int i = 0; i < post.words().size(); i++) {
      Word word = post.words().get(i);
      if (!lexicon.isDropped(word) && !post.masked().get(i)) {
        said.computeIfAbsent("=" + word.stem(), any -> new ArrayList<>())
            .add(new Mention("=" + word.stem(), i, i, 1));
      }
    }
    Map<String, Mentions> places = new HashMap<>();
    said.forEach((name, all) -> places.put(name, new Mentions(all)));
    return places;
  }

  private void add(
      List<Match> all,
      Saying saying,
      String anchor,
      Mention at,
      Map<String, Mentions> said,
      Post post) {
    Deadline.check();
    List<Mention> found = new ArrayList<>(List.of(at));
    BitSet used = new BitSet();
    used.set(at.first());
    used.set(at.last());
    String takenOver = null;
    for (String element : saying.elements()) {
      if (element.equals(anchor)) {
        continue;
      }
      Mention near = nearest(said.get(element), at, used, post);
      if (near == null) {
        if (takenOver != null || !lexicon.isPart(element) || !isTopic(element, at, post)) {
          return;
        }
        takenOver = element;
      } else {
        found.add(near);
        used.set(near.first());
        used.set(near.last());
      }
    }
    List<Mention> what =
        found.stream()
            .filter(one -> !lexicon.isPart(one.name()) && !lexicon.isPlace(one.name()))
            .toList();
    Match match =
        new Match(
            saying,
            found,
            what,
            weight(saying) - (takenOver == null ? 0 : weights.get(takenOver)),
            confidence(found, takenOver != null, post));
    if (tellsEnough(match, takenOver != null, post) && !isOfAnotherPart(match, post)) {
      all.add(match);
    }
  }

  /**
   * A single common word tells nothing; a single idea tells what is the matter only where one of
   * the sign's own pieces or places was just named.
   */
  private boolean tellsEnough(Match match, boolean takenOver, Post post) {
    List<String> elements = match.saying().elements();
    boolean idea = match.what().stream().anyMatch(one -> lexicon.isIdea(one.name()));
    if (takenOver) {
      return match.what().stream()
              .anyMatch(one -> lexicon.isIdea(one.name()) && !lexicon.isWeak(one.name()))
          && isPronounNear(match.head(), post);
    }
    if (elements.size() > 1) {
      return true;
    }
    return idea
        && !lexicon.isWeak(elements.get(0))
        && (match.saying().denies()
            || lexicon.standsAlone(elements.get(0))
            || isOwnSubjectNear(match, post));
  }

  private boolean isOwnSubjectNear(Match match, Post post) {
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

  private static boolean isPronounNear(int head, Post post) {
    for (int i = Math.max(0, head - 7); i <= Math.min(post.words().size() - 1, head + 3); i++) {
      if (post.sentence()[i] == post.sentence()[head]
          && post.lists().has("pronouns", post.words().get(i).plain())) {
        return true;
      }
    }
    return false;
  }

  private double weight(Saying saying) {
    return saying.elements().stream().mapToDouble(weights::get).sum();
  }

  private double confidence(List<Mention> found, boolean takenOver, Post post) {
    int first = found.stream().mapToInt(Mention::first).min().orElseThrow();
    int last = found.stream().mapToInt(Mention::last).max().orElseThrow();
    int own = found.stream().mapToInt(one -> one.last() - one.first() + 1).sum();
    int between = Math.max(0, post.layout().meaning(first, last) - own);
    return Math.max(0.3, EXACT - between * PER_WORD_BETWEEN - (takenOver ? TAKEN_OVER : 0));
  }

  private Mention nearest(Mentions places, Mention at, BitSet used, Post post) {
    if (places == null) {
      return null;
    }
    Mention best = null;
    int bestDistance = Integer.MAX_VALUE;
    Stretch sentence = post.sentenceOf(at.first());
    int first = Math.max(sentence.first(), post.layout().firstWithin(FARTHEST, at.first()));
    int last = Math.min(sentence.last(), post.layout().lastWithin(FARTHEST, at.last()));
    for (Mention one : places.around(first, last)) {
      if (one.first() < sentence.first()) {
        continue;
      }
      boolean before = one.last() < at.first();
      int from = before ? one.last() : at.last();
      int to = before ? at.first() : one.first();
      if (used.get(one.first())
          || used.get(one.last())
          || from >= to && one.first() != at.first()) {
        continue;
      }
      int distance = from >= to ? 0 : post.layout().meaning(from + 1, to);
      if (distance > FARTHEST || distance >= bestDistance) {
        continue;
      }
      Post.Break strongest = from >= to ? Post.Break.NONE : post.strongest(from, to);
      boolean where = lexicon.isPart(one.name()) || lexicon.isPlace(one.name());
      boolean apart =
          strongest.compareTo(Post.Break.TURN) >= 0
              || strongest == Post.Break.PAUSE && !(where && before)
              || strongest != Post.Break.NONE && newSubject(from, to, post);
      distance += strongest == Post.Break.PAUSE ? 1 : 0;
      if (!apart && distance <= FARTHEST && distance < bestDistance) {
        best = one;
        bestDistance = distance;
      }
    }
    return best;
  }

  /** Whether another thing begins to be spoken of between two words. */
  private boolean newSubject(int from, int to, Post post) {
    for (int i = from + 1; i <= to; i++) {
      if (post.breaks().get(i) != Post.Break.NONE
          && (post.lists().has("subjects", post.words().get(i).plain())
              || i + 1 < to && post.lists().has("subjects", post.words().get(i + 1).plain())
              || post.mentions().from(i, i + 1).stream()
                  .anyMatch(one -> lexicon.isPart(one.name()) && one.last() < to))) {
        return true;
      }
    }
    return false;
  }

  /** Whether "it" may mean this part: named in the last sentence before that names any. */
  private boolean isTopic(String part, Mention at, Post post) {
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
  private boolean isOfAnotherPart(Match match, Post post) {
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
