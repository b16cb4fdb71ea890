package easewright.intake;

import easewright.intake.Reading.ChangeRead;
import easewright.intake.Reading.ClothRead;
import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TextRead;
import easewright.intake.Sizes.Size;
import easewright.rulebook.EverydayWords;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Reads posts in plain English. Immutable and safe to share between threads. */
public final class Intake {
  private final Lexicon lexicon;
  private final Sayings so;
  private final Sayings notSo;
  private final Beliefs suspicions;
  private final Signs signs;
  private final Lengths lengths;
  private final Sizes sizes;
  private final Circumstance circumstance;
  private final Changes changes;
  private final Phrases garment;

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
    this.so = new Sayings(phrases, lexicon);
    this.notSo = new Sayings(words.notSo(), lexicon);
    this.suspicions = new Beliefs(words, lexicon);
    this.signs = new Signs(book.catalog().signs(), words.fine(), lexicon);
    this.lengths = new Lengths(words, lexicon.speech());
    this.sizes = new Sizes(words, lexicon.speech());
    this.circumstance = new Circumstance(words, lexicon.speech());
    this.changes = new Changes(words, lexicon);
    this.garment = new Phrases(lexicon.speech(), 0);
    words.garment().forEach(word -> garment.add("garment", word));
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
    List<Match> said = so.in(post);
    List<Match> denying = notSo.in(post);
    List<Match> suspected = suspicions.in(post);
    List<ChangeRead> earlier = changes.in(post, amounts);
    List<SignRead> read = signs.in(post, meantAsSeen(said, suspected, post), denying, amounts);
    List<ClothRead> cloths = ClothTests.in(post, amounts);
    List<LengthRead> measured = lengths.in(post, free(amounts, cloths));
    TextRead size = sizes.cut(post, named).orElse(null);
    List<TextRead> circumstances = circumstance.in(post);
    boolean about = isAbout(post, read, measured, cloths, size, earlier);
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

  /** Whether such a garment is spoken of at all. */
  private boolean isAbout(
      Post post,
      List<SignRead> read,
      List<LengthRead> measured,
      List<ClothRead> cloths,
      TextRead size,
      List<ChangeRead> earlier) {
    boolean named = !garment.in(post.words(), post.sentence()).isEmpty();
    long parts =
        post.mentions().stream()
            .map(Mention::name)
            .filter(name -> lexicon.isPart(name) || name.equals("breast") || name.equals("bust"))
            .distinct()
            .count();
    boolean anything =
        !read.isEmpty()
            || !measured.isEmpty()
            || !cloths.isEmpty()
            || size != null
            || !earlier.isEmpty();
    return anything && (named || parts > 0) || named && parts > 0;
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
