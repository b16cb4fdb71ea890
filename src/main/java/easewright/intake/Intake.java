package easewright.intake;

import easewright.intake.Reading.ChangeRead;
import easewright.intake.Reading.ClothRead;
import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TextRead;
import easewright.intake.Sizes.Size;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.EverydayWords;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Reads posts in plain English. Immutable and safe to share between threads. */
public final class Intake {
  private final Lexicon lexicon;
  private final Sayings so;
  private final Likeness likeness;
  private final Sayings notSo;
  private final Sayings suspicions;
  private final Signs signs;
  private final Lengths lengths;
  private final Sizes sizes;
  private final Circumstance circumstance;
  private final Changes changes;
  private final Phrases garment;
  private final Phrases perhaps;
  private final Set<String> redFlags;
  private final Set<String> fineParts;

  /** Reads with the words of this rule book. */
  public Intake(RuleBookSource book) {
    EverydayWords words = book.everyday();
    Map<String, List<String>> phrases = new LinkedHashMap<>();
    book.catalog()
        .signs()
        .values()
        .forEach(
            sign ->
                phrases.put(
                    sign.id(),
                    Stream.concat(
                            sign.phrases().stream(),
                            words.so().getOrDefault(sign.id(), List.of()).stream())
                        .toList()));
    this.lexicon =
        new Lexicon(
            words,
            Stream.concat(phrases.values().stream(), words.notSo().values().stream())
                .flatMap(Collection::stream)
                .toList());
    this.redFlags =
        book.catalog().signs().values().stream()
            .filter(SignEntry::redFlag)
            .map(SignEntry::id)
            .collect(Collectors.toSet());
    this.so = Sayings.meantAnywhere(phrases, lexicon, redFlags);
    double[] t =
        java.util.Arrays.stream(System.getProperty("tune", "0.5,4,1.5,0.7").split(","))
            .mapToDouble(Double::parseDouble)
            .toArray();
    this.likeness =
        new Likeness(so.all(), words.usual(), lexicon, new Likeness.Tuning(t[0], t[1], t[2], t[3]));
    this.notSo = Sayings.sayingSeveral(words.notSo(), lexicon);
    this.suspicions = new Sayings(words.beliefs(), lexicon);
    this.signs = new Signs(book.catalog().signs(), words, lexicon);
    this.lengths = new Lengths(words, lexicon.speech());
    this.sizes = new Sizes(words, lexicon.speech());
    this.circumstance = new Circumstance(words, lexicon.speech());
    this.changes = new Changes(words, lexicon);
    this.garment = new Phrases(lexicon.speech(), 0);
    words.garment().forEach(word -> garment.add("garment", word));
    this.perhaps = new Phrases(lexicon.speech(), 0);
    words.perhaps().forEach(word -> perhaps.add("perhaps", word));
    this.fineParts = words.fine().keySet();
  }

  /** What a text says; an empty text says nothing. */
  public Reading read(String text) {
    Post post = lexicon.read(text);
    List<Size> named = sizes.all(text);
    List<Amount> amounts =
        AmountFinder.in(text).stream()
            .filter(
                one ->
                    named.stream()
                        .noneMatch(
                            size ->
                                size.span().from() <= one.span().from()
                                    && one.span().from() < size.span().to()))
            .toList();
    List<Match> said = new ArrayList<>(so.in(post));
    if (!Boolean.getBoolean("nolike")) {
      for (Match like : likeness.in(post, so.said(post))) {
        boolean known =
            said.stream().anyMatch(one -> post.clause()[one.head()] == post.clause()[like.head()]);
        if (!known) said.add(like);
      }
    }
    List<Match> denying = notSo.in(post);
    List<Match> suspected = suspected(post);
    List<ChangeRead> earlier = changes.in(post, amounts);
    List<SignRead> read = signs.in(post, meantAsSeen(said, suspected, post), denying, amounts);
    List<ClothRead> cloths = ClothTests.in(post, amounts);
    List<LengthRead> measured = lengths.in(post, free(amounts, cloths));
    TextRead size = sizes.cut(post, named).orElse(null);
    List<TextRead> circumstances = circumstance.in(post);
    boolean about = isAbout(post, read, measured, cloths);
    if (!about) {
      return new Reading(
          false, List.of(), List.of(), List.of(), null, List.of(), null, List.of(), List.of(),
          List.of());
    }
    return new Reading(
        true,
        read,
        measured,
        cloths,
        size,
        circumstances,
        circumstance.monthsSinceOperation(post, circumstances).orElse(null),
        earlier,
        beliefs(suspected, post),
        notUnderstood(post, said, read, earlier));
  }

  private static List<Amount> free(List<Amount> amounts, List<ClothRead> cloths) {
    return amounts.stream()
        .filter(
            one ->
                cloths.stream()
                    .noneMatch(
                        cloth ->
                            cloth.span().from() <= one.span().from()
                                && one.span().to() <= cloth.span().to()))
        .toList();
  }

  /** Causes the writer believes in or asks about. */
  private List<Match> suspected(Post post) {
    List<Match> found = new ArrayList<>();
    for (Match match : suspicions.in(post)) {
      boolean thought =
          post.cues("belief").stream()
                  .anyMatch(
                      cue ->
                          cue.first() < match.head()
                              && post.sentence()[cue.first()] == post.sentence()[match.head()]
                              && post.strongest(cue.first(), match.head())
                                      .compareTo(Post.Break.PAUSE)
                                  < 0)
              || asked(match, post);
      if (thought && !new Polarity(lexicon).isDenied(match, post)) {
        found.add(match);
      }
    }
    return found;
  }

  private static boolean asked(Match match, Post post) {
    int last = match.last();
    while (last + 1 < post.words().size()
        && post.sentence()[last + 1] == post.sentence()[match.last()]) {
      last++;
    }
    int from = post.words().get(last).to();
    int to =
        last + 1 < post.words().size() ? post.words().get(last + 1).from() : post.text().length();
    return post.text().substring(from, to).contains("?");
  }

  /** What is suspected is not seen: "I think the straps are too short" reports no sign. */
  private List<Match> meantAsSeen(List<Match> said, List<Match> suspected, Post post) {
    return said.stream()
        .filter(
            match ->
                suspected.stream()
                    .noneMatch(
                        belief -> {
                          java.util.BitSet shared = belief.words();
                          shared.and(match.words());
                          return shared.cardinality() >= Math.min(2, match.words().cardinality())
                              && match.words().cardinality() <= belief.words().cardinality() + 1;
                        }))
        .toList();
  }

  private List<TextRead> beliefs(List<Match> suspected, Post post) {
    Map<String, TextRead> found = new LinkedHashMap<>();
    for (Match match : suspected) {
      found.putIfAbsent(
          match.saying().of(),
          new TextRead(
              match.saying().of(), post.span(match.first(), match.last()), match.confidence()));
    }
    return List.copyOf(found.values());
  }

  /** Whether such a garment is spoken of at all: enough must speak for it, another against it. */
  private boolean isAbout(
      Post post, List<SignRead> read, List<LengthRead> measured, List<ClothRead> cloths) {
    if (read.stream().anyMatch(one -> one.present() && redFlags.contains(one.id()))) {
      return true;
    }
    int score = 2 * count(garment, post, 1) + count(perhaps, post, 1);
    score +=
        (int)
            Math.min(
                2,
                post.mentions().stream()
                    .map(Mention::name)
                    .filter(
                        name ->
                            fineParts.contains(name) && lexicon.isPart(name)
                                || name.equals("breast")
                                || name.equals("bust"))
                    .distinct()
                    .count());
    score += 2 * Math.min(1, measured.size());
    score += Math.min(1, cloths.size());
    score += (int) Math.min(3, read.stream().filter(one -> one.confidence() > 0.75).count());
    score -= 3 * Math.min(1, post.cues("elsewhere").size());
    return score >= 2 || score >= 1 && read.stream().anyMatch(SignRead::present);
  }

  private static int count(Phrases phrases, Post post, int most) {
    return (int)
        phrases.in(post.words(), post.sentence()).stream()
            .filter(one -> !post.masked().get(one.first()))
            .limit(most)
            .count();
  }

  /** Sentences that name a piece and a complaint, and were read as nothing. */
  private List<Span> notUnderstood(
      Post post, List<Match> said, List<SignRead> read, List<ChangeRead> earlier) {
    List<Span> spans = new ArrayList<>();
    for (int clause = 0, at = 0; at < post.words().size(); clause++) {
      int first = at;
      while (at < post.words().size() && post.clause()[at] == clause) {
        at++;
      }
      int end = at;
      if (first == end) {
        continue;
      }
      Span span = post.span(first, end - 1);
      boolean speaks =
          post.mentions().stream()
              .anyMatch(
                  one ->
                      first <= one.first()
                          && one.first() < end
                          && !lexicon.isPlace(one.name())
                          && !lexicon.isPart(one.name()));
      boolean names =
          post.mentions().stream()
              .anyMatch(
                  one -> first <= one.first() && one.first() < end && lexicon.isPart(one.name()));
      boolean used =
          read.stream().anyMatch(one -> touch(one.span(), span))
              || earlier.stream().anyMatch(one -> touch(one.span(), span))
              || said.stream()
                  .anyMatch(match -> touch(post.span(match.first(), match.last()), span));
      if (speaks && names && !used) {
        spans.add(span);
      }
    }
    return spans;
  }

  private static boolean touch(Span one, Span other) {
    return one.from() < other.to() && other.from() < one.to();
  }
}
