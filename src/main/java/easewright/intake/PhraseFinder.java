package easewright.intake;

import easewright.deadline.Deadline;
import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Word;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** Finds the book's phrases in a text, whatever their order and the words between. */
final class PhraseFinder {
  /** The catalog's own phrases come first in every list; there are at most this many. */
  private static final int FIRST_PHRASES = 5;

  private static final double EXACT = 0.95;
  private static final double TAKEN_OVER = 0.15;
  private static final double PER_WORD_BETWEEN = 0.03;

  private final Lexicon lexicon;
  private final List<Saying> all;
  private final PhraseSubjects subjects;
  private final NearestMention nearest;
  private final Map<String, List<Saying>> byRarest = new HashMap<>();
  private final Map<String, Double> weights = new HashMap<>();

  PhraseFinder(Map<String, List<String>> phrasesById, Lexicon lexicon) {
    this(plain(phrasesById, lexicon), lexicon, 1, Set.of());
  }

  /** Every way in which a book says each sign. */
  static Map<String, List<String>> phrases(Map<String, SignEntry> signs, EverydayWords words) {
    Map<String, List<String>> phrases = new LinkedHashMap<>();
    for (SignEntry sign : signs.values()) {
      List<String> more = words.so().getOrDefault(sign.id(), List.of());
      phrases.put(sign.id(), Stream.concat(sign.phrases().stream(), more.stream()).toList());
    }
    return phrases;
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
    this.nearest = new NearestMention(lexicon);
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
    }
    this.subjects = new PhraseSubjects(this.all, lexicon, anywhere);
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
      Mention near = nearest.to(at, said.get(element), used, post);
      if (near == null) {
        if (takenOver != null || !lexicon.isPart(element) || !subjects.isTopic(element, at, post)) {
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
    if (tellsEnough(match, takenOver != null, post) && !subjects.isOfAnotherPart(match, post)) {
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
          && PhraseSubjects.isPronounNear(match.head(), post);
    }
    if (elements.size() > 1) {
      return true;
    }
    return idea
        && !lexicon.isWeak(elements.get(0))
        && (match.saying().denies()
            || lexicon.standsAlone(elements.get(0))
            || subjects.isOwnNear(match, post));
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
}
