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
final class Sayings {
  /** Farther apart, words of one sentence speak of different things. */
  private static final int FARTHEST = 5;

  private static final Set<String> PRONOUNS =
      Set.of(
          "it", "they", "they're", "theyre", "them", "that", "this", "these", "those", "both",
          "its", "it's", "there");

  /** The catalog's own phrases come first in every list; there are at most this many. */
  private static final int FIRST_PHRASES = 5;

  private static final Set<String> SUBJECTS =
      Set.of(
          "the", "my", "it", "its", "it's", "they", "i", "i'm", "im", "i've", "ive", "there",
          "there's", "that", "she", "her", "he", "can't", "cannot");

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

  Sayings(Map<String, List<String>> phrasesById, Lexicon lexicon) {
    this(plain(phrasesById, lexicon), lexicon, 1, Set.of());
  }

  /**
   * @param anywhere what is meant wherever it is said, whichever piece is named beside it
   */
  static Sayings meantAnywhere(
      Map<String, List<String>> phrasesById, Lexicon lexicon, Set<String> anywhere) {
    return new Sayings(plain(phrasesById, lexicon), lexicon, 1, anywhere);
  }

  /** Phrases that may say several things at once, each of two words or more. */
  static Sayings sayingSeveral(Map<String, List<String>> phrasesById, Lexicon lexicon) {
    List<Saying> all = new ArrayList<>();
    phrasesById.forEach(
        (id, phrases) -> phrases.forEach(phrase -> all.add(Saying.of(id, phrase, lexicon))));
    return new Sayings(all, lexicon, 2, Set.of());
  }

  private Sayings(List<Saying> all, Lexicon lexicon, int least, Set<String> anywhere) {
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
    Map<String, List<Mention>> said = said(post);
    List<Match> all = new ArrayList<>();
    said.forEach(
        (element, places) ->
            byRarest
                .getOrDefault(element, List.of())
                .forEach(
                    saying -> places.forEach(at -> add(all, saying, element, at, said, post))));
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
  Map<String, List<Mention>> said(Post post) {
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
    return said;
  }

  private void add(
      List<Match> all,
      Saying saying,
      String anchor,
      Mention at,
      Map<String, List<Mention>> said,
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
      Mention near = nearest(said.getOrDefault(element, List.of()), at, used, post);
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
          && PRONOUNS.contains(post.words().get(i).plain())) {
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
    int between = Math.max(0, meaning(post, first, last, Integer.MAX_VALUE) - own);
    return Math.max(0.3, EXACT - between * PER_WORD_BETWEEN - (takenOver ? TAKEN_OVER : 0));
  }

  /** How many words mean something; counts no further than to the most. */
  private int meaning(Post post, int first, int last, int most) {
    int count = 0;
    for (int i = first; i <= last && count < most; i++) {
      count += lexicon.isDropped(post.words().get(i)) ? 0 : 1;
    }
    return count;
  }

  private Mention nearest(List<Mention> places, Mention at, BitSet used, Post post) {
    Mention best = null;
    int bestDistance = Integer.MAX_VALUE;
    for (Mention one : places) {
      if (post.sentence()[one.first()] != post.sentence()[at.first()]) {
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
      int distance = from >= to ? 0 : meaning(post, from + 1, to, FARTHEST + 1);
      if (distance > FARTHEST || distance >= bestDistance) {
        continue; // before looking at what stands between, or long texts would take long
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
      int at = i;
      if (post.breaks().get(i) != Post.Break.NONE
          && (SUBJECTS.contains(post.words().get(i).plain())
              || i + 1 < to && SUBJECTS.contains(post.words().get(i + 1).plain())
              || post.mentions().stream()
                  .anyMatch(
                      one ->
                          lexicon.isPart(one.name())
                              && (one.first() == at || one.first() == at + 1)
                              && one.last() < to))) {
        return true;
      }
    }
    return false;
  }

  /** Whether "it" may mean this part: named in the last sentence before that names any. */
  private boolean isTopic(String part, Mention at, Post post) {
    List<Mention> beside = post.mentionsInClause(post.clause()[at.first()]);
    if (beside.stream().anyMatch(one -> lexicon.isPart(one.name()))) {
      return false;
    }
    int sentence = post.sentence()[at.first()];
    Mention last = null;
    for (Mention one : post.mentions(sentence - 2, sentence)) {
      if (one.last() < at.first() && lexicon.isPart(one.name())) {
        boolean later =
            last == null || post.sentence()[one.first()] > post.sentence()[last.first()];
        boolean same = last != null && !later && one.name().equals(part);
        last = later || same || !last.name().equals(part) ? one : last;
      }
    }
    return last != null && last.name().equals(part);
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
    int sentence = post.sentence()[head];
    for (Mention other : post.mentions(sentence, sentence)) {
      if (!lexicon.isPart(other.name())
          || named.contains(other.name())
          || match.said().stream().anyMatch(one -> one.covers(other.first()))) {
        continue;
      }
      if (part != null) {
        boolean between = part.last() < other.first() && other.last() < head;
        boolean subject =
            part.first() > head
                && other.last() < head
                && post.clause()[other.first()] == post.clause()[head];
        if (between || subject) {
          return true;
        }
      } else if (!own.contains(other.name())
          && !own.isEmpty()
          && post.clause()[other.first()] == post.clause()[head]) {
        return true;
      }
    }
    return false;
  }
}
