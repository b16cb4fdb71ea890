package easewright.intake;

import easewright.intake.Bearer.Whose;
import easewright.intake.Reading.ChangeRead;
import easewright.intake.Reading.ClothRead;
import easewright.intake.Reading.ReadYourself;
import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TextRead;
import easewright.intake.Sizes.Size;
import easewright.reading.TrainedReader;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.EverydayWords;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Reads posts in plain English. Immutable and safe to share between threads. */
public final class Intake {
  private final Lexicon lexicon;
  private final AmountWords amountWords;
  private final ClothTestWords clothTestWords;
  private final PhraseFinder so;
  private final PhraseFinder notSo;
  private final Beliefs beliefs;
  private final Signs signs;
  private final Corrections corrections;
  private final Lengths lengths;
  private final Sizes sizes;
  private final CircumstanceFinder circumstance;
  private final ChangeFinder changes;
  private final Subject subject;
  private final Unread unread;
  private final ShortReply shortReply;
  private final HealthWords health;
  private final List<DangerReader> dangerReaders;
  private final Map<String, SignEntry> catalog;

  /** Reads with the words of this rule book. */
  public Intake(RuleBookSource book) {
    this(book, List.of());
  }

  /**
   * Reads with the words of this rule book and with other readers of dangers.
   *
   * @param more readers that may raise dangers beside the rule book's words
   */
  Intake(RuleBookSource book, List<DangerReader> more) {
    EverydayWords words = book.everyday();
    this.catalog = book.catalog().signs();
    Map<String, List<String>> phrases = new LinkedHashMap<>();
    catalog.forEach(
        (id, sign) ->
            phrases.put(
                id,
                Stream.of(sign.phrases(), words.so().getOrDefault(id, List.of()))
                    .flatMap(List::stream)
                    .toList()));
    Set<String> redFlags =
        catalog.values().stream()
            .filter(SignEntry::redFlag)
            .map(SignEntry::id)
            .collect(Collectors.toSet());
    this.lexicon =
        new Lexicon(
            words,
            Stream.of(phrases.values(), words.notSo().values(), words.danger().groups().values())
                .flatMap(Collection::stream)
                .flatMap(Collection::stream)
                .toList(),
            new ReadingBounds(book));
    this.amountWords = new AmountWords(lexicon.lists(), lexicon.bounds());
    this.clothTestWords = new ClothTestWords(lexicon.lists(), lexicon.bounds());
    this.so = PhraseFinder.meantAnywhere(phrases, lexicon, redFlags);
    this.notSo = PhraseFinder.sayingSeveral(words.notSo(), lexicon);
    this.beliefs = new Beliefs(words, lexicon);
    this.signs = new Signs(book, lexicon);
    this.corrections = new Corrections(lexicon.lists());
    this.lengths = new Lengths(words, lexicon);
    this.sizes = new Sizes(words, lexicon);
    this.circumstance = new CircumstanceFinder(words, lexicon);
    this.changes = new ChangeFinder(words, lexicon);
    this.subject = new Subject(words, lexicon, redFlags);
    this.unread = new Unread(lexicon, new Likeness(so.all(), words.usual()));
    this.shortReply = new ShortReply(words, lexicon.speech());
    this.health = new HealthWords(words.danger(), lexicon);
    this.dangerReaders = Stream.concat(Stream.of(health), more.stream()).toList();
  }

  /** What a text says; an empty text says nothing. */
  public Reading read(String text) {
    return read(text, null, Optional.empty());
  }

  /**
   * What a text says in reply to a question.
   *
   * @param asked the sign that was asked about, or null
   * @param trained reads the signs a second time
   * @throws easewright.deadline.DeadlinePassed when the thread's time is over
   */
  public Reading read(String text, SignEntry asked, Optional<TrainedReader> trained) {
    Post post = lexicon.read(text);
    List<Size> named = sizes.all(text);
    List<Amount> amounts =
        free(
            corrections.settled(text, AmountFinder.in(text, amountWords)),
            named.stream().map(Size::span).toList());
    BitSet lookAlikes = health.lookAlikes(post);
    Map<Whose, List<Match>> bySubject = bySubject(post, lookAlikes);
    List<Match> said = bySubject.getOrDefault(Whose.PERSON, List.of());
    List<Match> suspected = beliefs.in(post);
    List<ChangeRead> earlier = changes.in(post, amounts);
    List<SignRead> byWords =
        new ArrayList<>(
            signs.in(post, beliefs.seen(said, suspected, earlier, post), notSo.in(post), amounts));
    List<Danger> dangers =
        dangerReaders.stream().flatMap(reader -> reader.in(post).stream()).toList();
    signs.raise(dangers, byWords);
    List<ReadYourself> readYourself = health.readYourself(post, dangerSpans(byWords));
    doubted(bySubject.getOrDefault(Whose.DOUBT, List.of()), post, byWords, readYourself);
    readYourself.removeIf(one -> isNamedByADanger(text, one, byWords));
    Joined joined =
        trained
            .flatMap(reader -> reader.read(text))
            .map(model -> Joined.of(byWords, model, catalog))
            .orElseGet(() -> Joined.ofWordsAlone(byWords));
    List<SignRead> read = joined.signs();
    joined.addReadYourself(dangerSpans(read), readYourself);
    List<TextRead> couldNotTell = shortReply.to(asked, post, amounts, read);
    if (asked != null && asked.redFlag() && !post.words().isEmpty() && isOpen(asked, read)) {
      TextSpan all = post.span(0, post.words().size() - 1);
      readYourself.add(new ReadYourself(all, "in reply to: " + asked.name()));
    }
    List<ClothRead> cloths = ClothTests.in(post, amounts, clothTestWords);
    Lengths.Measured measured =
        lengths.in(post, free(amounts, cloths.stream().map(ClothRead::span).toList()));
    List<TextRead> circumstances =
        circumstance.in(post, health.circumstances(post), lookAlikes, health.bearer(post));
    if (asked == null
        && dangers.isEmpty()
        && !subject.isFit(post, read, measured.lengths(), cloths)) {
      return Reading.ofSomethingElse(CircumstanceFinder.onSafety(circumstances), readYourself);
    }
    return new Reading(
        true,
        read,
        measured.lengths(),
        cloths,
        sizes.cut(post, named).orElse(null),
        circumstances,
        circumstance.monthsSinceOperation(post, circumstances).orElse(null),
        earlier,
        beliefs.asTexts(suspected, post),
        couldNotTell,
        joined.notUnderstood(
            unread.in(post, so.said(post), said, suspected, earlier), measured.asked()),
        readYourself);
  }

  private static boolean isOpen(SignEntry asked, List<SignRead> read) {
    return read.stream().noneMatch(one -> one.id().equals(asked.id()));
  }

  /** What was found, by whom or what it is said of; figures of speech left out. */
  private Map<Whose, List<Match>> bySubject(Post post, BitSet lookAlikes) {
    Bearer bearer = health.bearer(post);
    return so.in(post).stream()
        .filter(match -> !isLookAlike(match, lookAlikes))
        .collect(
            Collectors.groupingBy(
                match ->
                    signs.isDanger(match.saying().of())
                        ? bearer.of(match.saying().of(), match.first(), match.last(), match.head())
                        : Whose.PERSON));
  }

  /** Words that stand in the phrase a danger was read by are judged with it. */
  private boolean isNamedByADanger(String text, ReadYourself doubt, List<SignRead> read) {
    String words = doubt.span().in(text).toLowerCase(Locale.ROOT);
    return read.stream()
        .anyMatch(
            one -> one.present() && signs.isDanger(one.id()) && one.because().contains(words));
  }

  /** What may be meant of a person and was not read as a danger. */
  private void doubted(
      List<Match> doubted, Post post, List<SignRead> read, List<ReadYourself> readYourself) {
    List<TextSpan> dangers = dangerSpans(read);
    for (Match match : doubted) {
      TextSpan span = post.span(match.first(), match.last());
      boolean known =
          dangers.stream().anyMatch(span::touches)
              || readYourself.stream().anyMatch(other -> other.span().touches(span));
      if (!known && !signs.isDenied(match, post)) {
        readYourself.add(new ReadYourself(span, match.saying().phrase()));
      }
    }
  }

  /** A figure of speech tells of no danger: "numb with boredom". */
  private boolean isLookAlike(Match match, BitSet lookAlikes) {
    return signs.isDanger(match.saying().of())
        && match.what().stream().anyMatch(one -> lookAlikes.get(one.first()));
  }

  private List<TextSpan> dangerSpans(List<SignRead> read) {
    return read.stream()
        .filter(one -> one.present() && signs.isDanger(one.id()))
        .map(SignRead::span)
        .toList();
  }

  /** Amounts that are part of nothing else: "36D" measures no body. */
  private static List<Amount> free(List<Amount> amounts, List<TextSpan> taken) {
    return amounts.stream()
        .filter(
            one ->
                taken.stream()
                    .noneMatch(
                        span -> span.from() <= one.span().from() && one.span().from() < span.to()))
        .toList();
  }
}
