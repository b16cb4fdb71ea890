package easewright.intake;

import easewright.intake.Bearer.Whose;
import easewright.intake.Reading.ChangeRead;
import easewright.intake.Reading.ClothRead;
import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.NotUnderstood;
import easewright.intake.Reading.ReadYourself;
import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TextRead;
import easewright.intake.Sizes.Size;
import easewright.modelreader.ModelReading;
import easewright.number.Amount;
import easewright.number.AmountFinder;
import easewright.number.AmountWords;
import easewright.number.ClothTestWords;
import easewright.number.Corrections;
import easewright.number.ReadingBounds;
import easewright.number.TextSpan;
import easewright.reading.TrainedReader;
import easewright.reading.TrainedReading;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.EverydayWords;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.List;
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
  private final TimeWords times;
  private final FineAreas fineAreas;
  private final Corrections corrections;
  private final Lengths lengths;
  private final Sizes sizes;
  private final CircumstanceFinder circumstance;
  private final ChangeFinder changes;
  private final Subject subject;
  private final Unread unread;
  private final ShortReply shortReply;
  private final HealthWords health;
  private final DangersSaid dangersSaid;
  private final SentenceDetails sentenceDetails;
  private final AmountsTold amountsTold;
  private final ToldFinder told;
  private final Explained explained;
  private final TrialSigns trialSigns;
  private final ModelSaid modelSaid;
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
    Map<String, List<String>> phrases = PhraseFinder.phrases(catalog, words);
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
    this.clothTestWords = ClothTestWords.of(lexicon.lists(), lexicon.bounds());
    this.so = PhraseFinder.meantAnywhere(phrases, lexicon, redFlags);
    this.notSo = PhraseFinder.sayingSeveral(words.notSo(), lexicon);
    this.beliefs = new Beliefs(words, lexicon);
    this.signs = new Signs(book, lexicon);
    this.times = new TimeWords(lexicon.lists());
    this.fineAreas = new FineAreas(catalog, lexicon, new DeniedComplaints(words, lexicon));
    this.corrections = new Corrections(lexicon.lists());
    this.lengths = new Lengths(words, lexicon);
    this.sizes = new Sizes(words, lexicon);
    this.circumstance = new CircumstanceFinder(words, lexicon);
    this.changes = new ChangeFinder(book, lexicon);
    this.subject = new Subject(words, lexicon, redFlags);
    this.unread = new Unread(lexicon, so.all(), words.usual());
    this.shortReply = new ShortReply(words, lexicon.speech());
    this.health = new HealthWords(words.danger(), lexicon);
    this.dangersSaid = new DangersSaid(so, signs, health);
    Opposites opposites = new Opposites(lexicon.lists());
    this.sentenceDetails = new SentenceDetails(so.all(), signs, opposites);
    this.amountsTold = new AmountsTold(signs, catalog, lexicon);
    this.trialSigns = new TrialSigns(signs, catalog, book.catalog().adjustments(), lexicon.lists());
    this.modelSaid = new ModelSaid(book, lengths);
    this.explained = new Explained(lexicon, catalog);
    this.told = new ToldFinder(book, lexicon, redFlags);
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
    return read(text, asked, trained, ModelReading.NOTHING);
  }

  /**
   * The same, with what a language model read of this text.
   *
   * @param model read of the same text
   */
  public Reading read(
      String text, SignEntry asked, Optional<TrainedReader> trained, ModelReading model) {
    Post whole = lexicon.read(text);
    List<Size> named = whole.words().isEmpty() ? List.of() : sizes.all(text);
    List<Amount> numbers =
        whole.words().isEmpty()
            ? List.of() // nothing but signs: no word says what is measured
            : AmountsLeft.free(
                corrections.settled(text, AmountFinder.in(text, amountWords)),
                named.stream().map(Size::span).toList());
    BitSet lookAlikes = health.lookAlikes(whole);
    Map<Whose, List<Match>> bySubject = dangersSaid.bySubject(whole, lookAlikes);
    List<Match> everything = bySubject.getOrDefault(Whose.PERSON, List.of());
    SaidWhere where = new SaidWhere(everything);
    Optional<TrainedReading> second =
        trained.flatMap(reader -> reader.read(text, AmountsByModel.places(numbers)));
    ToldFinder.Tried tried = told.tried(whole, numbers, named, where, second);
    OthersSaid others = OthersSaid.in(whole);
    tried.taken().or(others.words());
    Post post = whole.without(tried.taken());
    PieceLengths.Found pieces = told.pieces(post, numbers);
    List<Amount> amounts =
        AmountsLeft.free(AmountsLeft.untaken(numbers, tried.taken(), whole), pieces.taken());
    List<Match> said =
        everything.stream()
            .filter(one -> signs.isDanger(one.saying().of()) || !tried.taken().get(one.head()))
            .toList();
    List<Match> suspected = beliefs.in(post);
    List<ChangeRead> made = told.changed(changes.in(post, amounts, tried.taken()), where, whole);
    List<ChangeRead> earlier = UndoneChanges.kept(made, whole);
    List<Match> seen = beliefs.seen(said, suspected, earlier, post);
    List<Amount> ofSigns = AmountsLeft.free(amounts, made.stream().map(ChangeRead::span).toList());
    List<SignRead> byWords = new ArrayList<>(signs.in(post, seen, notSo.in(post), ofSigns));
    List<Danger> dangers =
        dangerReaders.stream().flatMap(reader -> reader.in(whole).stream()).toList();
    signs.raise(dangers, byWords);
    trialSigns.addSaid(tried.trials(), whole, byWords);
    List<ReadYourself> readYourself =
        dangersSaid.readYourself(
            whole, post, bySubject.getOrDefault(Whose.DOUBT, List.of()), byWords);
    Joined both =
        Joined.of(
            byWords,
            tried.denyingNothing(second, whole),
            catalog,
            danger -> asked == null && DangersSaid.mayBeLowered(danger, whole));
    Joined joined =
        sentenceDetails.in(modelSaid.with(both, model, whole, tried.taken()), post, ofSigns, seen);
    List<SignRead> read = trialSigns.withShown(tried.trials(), joined.signs(), whole);
    read.removeIf(one -> !signs.isDanger(one.id()) && others.isOf(one));
    joined.addReadYourself(dangersSaid.spans(read), readYourself);
    List<TextSpan> harmless = new ArrayList<>();
    if (asked == null && !whole.words().isEmpty()) {
      harmless.addAll(DangerTraces.takeHarmless(readYourself, second, catalog, whole));
      explained.takeBack(whole, read, signs::isDanger, readYourself);
    }
    List<TextRead> couldNotTell = shortReply.to(asked, post, amounts, read);
    if (asked != null && asked.redFlag() && !post.words().isEmpty() && isOpen(asked, read)) {
      readYourself.add(new ReadYourself(post.whole(), "in reply to: " + asked.name()));
    }
    List<ClothRead> cloths = ClothTests.in(post, amounts, clothTestWords);
    List<Amount> free = AmountsLeft.free(amounts, cloths.stream().map(ClothRead::span).toList());
    Lengths.Measured measured = lengths.in(post, free);
    List<LengthRead> measurements = modelSaid.with(measured.lengths(), model, free);
    TextRead cut = tried.cut() == null ? sizes.cut(post, named).orElse(null) : tried.cut();
    Told more =
        told.told(post, tried, pieces, amounts, named, cut).with(UndoneChanges.trials(made, whole));
    List<TextRead> circumstances =
        modelSaid.withCircumstances(
            circumstance.in(whole, health.circumstances(whole), lookAlikes, health.bearer(whole)),
            model);
    List<NotUnderstood> unplaced =
        read.isEmpty() && suspected.isEmpty() && earlier.isEmpty()
            ? unread.unplaced(post)
            : List.of();
    if (asked == null
        && dangers.stream().noneMatch(one -> read.stream().anyMatch(s -> s.isSo(one.sign())))
        && !subject.isFit(whole, read, measurements, cloths, more)
        && !subject.isOnlyWhatIsSeen(post, unplaced)) {
      return Reading.ofSomethingElse(CircumstanceFinder.onSafety(circumstances), readYourself);
    }
    List<SignRead> sized =
        amountsTold.on(
            read, post, AmountsLeft.unmeasured(ofSigns, cloths, measured.lengths()), numbers);
    return new Reading(
        true,
        sized,
        times.in(post, read),
        fineAreas.in(post, said, read),
        told.lengths(post, measurements, pieces),
        cloths,
        cut,
        circumstances,
        circumstance.monthsSinceOperation(post, circumstances).orElse(null),
        earlier,
        more,
        beliefs.asTexts(suspected, post),
        couldNotTell,
        joined.notUnderstood(
            unplaced.isEmpty()
                ? unread.in(post, amounts, so.said(post), said, suspected, earlier, more)
                : unplaced,
            others.and(measured.asked(), harmless)),
        readYourself);
  }

  private static boolean isOpen(SignEntry asked, List<SignRead> read) {
    return read.stream().noneMatch(one -> one.id().equals(asked.id()));
  }
}
