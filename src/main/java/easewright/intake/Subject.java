package easewright.intake;

import easewright.english.Mention;
import easewright.english.Phrases;
import easewright.intake.Reading.ClothRead;
import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.NotUnderstood;
import easewright.intake.Reading.SignRead;
import easewright.rulebook.EverydayWords;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.lucene.analysis.en.EnglishAnalyzer;

/** Tells whether a text is about the fit, cloth or making of such a garment at all. */
final class Subject {
  /** A sign read less surely than this may be a chance likeness. */
  private static final double SURE = 0.75;

  /** So many words before a thing "like" may make it a figure of speech. */
  private static final int FARTHEST_LIKE = 3;

  private final Lexicon lexicon;
  private final Set<String> redFlags;
  private final Set<String> parts;
  private final Phrases garment;
  private final Phrases perhaps;

  Subject(EverydayWords words, Lexicon lexicon, Set<String> redFlags) {
    this.lexicon = lexicon;
    this.redFlags = redFlags;
    this.parts = words.fine().keySet();
    this.garment = new Phrases(lexicon.speech(), 0);
    words.garment().forEach(word -> garment.add("garment", word));
    this.perhaps = new Phrases(lexicon.speech(), 0);
    words.perhaps().forEach(word -> perhaps.add("perhaps", word));
  }

  /**
   * Enough must speak for it; another thing named speaks against it. A danger counts unless only
   * another thing is spoken of: "my fingers go numb from quilting".
   */
  boolean isFit(
      Post post, List<SignRead> read, List<LengthRead> lengths, List<ClothRead> cloths, Told told) {
    boolean anotherThing = post.cues("other thing").stream().anyMatch(one -> !isLikened(one, post));
    boolean ours = isNamed(garment, post) || isNamed(perhaps, post) || pieces(post) > 0;
    if (read.stream().anyMatch(one -> one.present() && redFlags.contains(one.id()))
        && (ours || !anotherThing)) {
      return true;
    }
    long score =
        2 * (isNamed(garment, post) ? 1 : 0)
            + (isNamed(perhaps, post) ? 1 : 0)
            + Math.min(2, pieces(post))
            + (lengths.isEmpty() ? 0 : 2)
            + (cloths.isEmpty() ? 0 : 1)
            + (told.tellsOfAToile() ? 2 : 0)
            + (told.asksAbout().isEmpty() ? 0 : 1)
            + (told.design().isEmpty() ? 0 : 1)
            + (isJudged(post) ? 1 : 0)
            + Math.min(3, read.stream().filter(one -> one.confidence() > SURE).count())
            - (post.cues("elsewhere").isEmpty() && !anotherThing ? 0 : 3)
            - (isAnotherMatter(post, read) ? 3 : 0);
    return score >= 2 || score == 1 && read.stream().anyMatch(SignRead::present);
  }

  /** Of thread, machines or prices, where nothing is told that the garment does. */
  private static boolean isAnotherMatter(Post post, List<SignRead> read) {
    return !post.cues("another matter").isEmpty() && read.stream().noneMatch(SignRead::present);
  }

  /** "Loose like a night dress" speaks of no dress. */
  private static boolean isLikened(Mention thing, Post post) {
    for (int i = Math.max(0, thing.first() - FARTHEST_LIKE); i < thing.first(); i++) {
      if (post.lists().has("likening", post.words().get(i).plain())) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether a text is a few words about something seen and about nothing else: "it rides up".
   * Whoever writes so to a fitting means the garment, and is asked where.
   */
  boolean isOnlyWhatIsSeen(Post post, List<NotUnderstood> unplaced) {
    return !unplaced.isEmpty()
        && post.words().size() <= lexicon.bounds().of("most-words-without-a-place")
        && wordsOfOtherThings(post) <= 1
        && post.cues("other thing").isEmpty()
        && post.cues("elsewhere").isEmpty();
  }

  /** Words that are neither small nor of what is seen; "very" is one. */
  private long wordsOfOtherThings(Post post) {
    return IntStream.range(0, post.words().size())
        .filter(at -> post.mentions().stream().noneMatch(one -> one.covers(at)))
        .filter(
            at -> !EnglishAnalyzer.ENGLISH_STOP_WORDS_SET.contains(post.words().get(at).plain()))
        .count();
  }

  private long pieces(Post post) {
    return post.mentions().stream()
        .map(Mention::name)
        .filter(name -> isPiece(name) || name.equals("breast") || name.equals("bust"))
        .distinct()
        .count();
  }

  /** Whether a piece is called too long, too small or the like: "the straps are a bit long". */
  private boolean isJudged(Post post) {
    return post.mentions().stream()
        .filter(one -> isPiece(one.name()))
        .map(one -> post.clauseOf(one.first()))
        .anyMatch(
            clause ->
                IntStream.rangeClosed(clause.first(), clause.last())
                    .anyMatch(at -> post.lists().has("judging", post.words().get(at).plain())));
  }

  /** Whether it is a piece of the garment, and no thread, needle or machine. */
  private boolean isPiece(String name) {
    return parts.contains(name) && lexicon.isPart(name);
  }

  private static boolean isNamed(Phrases phrases, Post post) {
    return phrases.in(post.words(), post.sentence()).stream()
        .anyMatch(one -> !post.masked().get(one.first()));
  }
}
