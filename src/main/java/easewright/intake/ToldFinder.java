package easewright.intake;

import easewright.intake.PieceLengths.Found;
import easewright.intake.Reading.ChangeRead;
import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.TextRead;
import easewright.intake.Sizes.Size;
import easewright.number.Amount;
import easewright.reading.SentenceSaid;
import easewright.reading.TrainedReading;
import easewright.rulebook.RuleBookSource;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Finds what a text tells beside its signs. */
final class ToldFinder {
  private final TrialFinder trials;
  private final SizesTried sizes;
  private final PieceLengths pieces;
  private final DesignFinder design;
  private final AllowancesSaid allowances;
  private final TapeFinder tapes;
  private final AskedChanges asked;
  private final QuestionFinder questions;
  private final QuestionsByModel questionsByModel;
  private final ChangedSigns changed;

  /**
   * What was tried, and the words that speak of it and not of this toile.
   *
   * @param cut the size there is now; null where the text names no other
   * @param model what the trained model read of the text
   */
  record Tried(
      TrialFinder.Found trials,
      List<Told.SizeRead> sizes,
      TextRead cut,
      BitSet taken,
      Optional<TrainedReading> model) {

    /** A reading of the text in which sentences that mostly tell of these deny nothing. */
    Optional<TrainedReading> denyingNothing(Optional<TrainedReading> read, Post post) {
      return read.map(one -> one.denyingNothingIn(sentence -> tellsOfIt(sentence, post)));
    }

    private boolean tellsOfIt(SentenceSaid sentence, Post post) {
      int first = Whereabouts.wordAt(post, sentence.from());
      int last = Whereabouts.wordAt(post, sentence.to() - 1);
      return 2 * taken.get(first, last + 1).cardinality() > last + 1 - first;
    }
  }

  ToldFinder(RuleBookSource book, Lexicon lexicon, Set<String> dangers) {
    this.trials = new TrialFinder(book, lexicon);
    this.sizes = new SizesTried(lexicon, dangers);
    this.pieces = new PieceLengths(book, lexicon);
    this.design = new DesignFinder(lexicon);
    this.allowances = new AllowancesSaid(lexicon);
    this.tapes = new TapeFinder(book, lexicon);
    this.asked = new AskedChanges(book.everyday(), book.catalog().adjustments().keySet(), lexicon);
    this.questions = new QuestionFinder(lexicon);
    this.questionsByModel = new QuestionsByModel(book.catalog().adjustments().keySet());
    this.changed = new ChangedSigns(dangers);
  }

  /** Trials, and toiles in other sizes. */
  Tried tried(
      Post post,
      List<Amount> amounts,
      List<Size> named,
      SaidWhere said,
      Optional<TrainedReading> model) {
    TrialFinder.Found found = trials.in(post, amounts, said, model);
    SizesTried.Found toiles = sizes.in(post, named, said);
    BitSet taken = (BitSet) found.taken().clone();
    taken.or(toiles.taken());
    return new Tried(found, toiles.sizes(), toiles.cut(), taken, model);
  }

  /** What was measured of straps, edges and the band's cloth. */
  Found pieces(Post post, List<Amount> amounts) {
    return pieces.in(post, amounts).with(allowances.in(post, amounts));
  }

  /** The changes, each with the signs that it changed. */
  List<ChangeRead> changed(List<ChangeRead> changes, SaidWhere said, Post post) {
    return changes.stream().map(one -> changed.of(one, said, post)).toList();
  }

  /** The lengths of body, toile and pattern, each with how the tape was held. */
  List<LengthRead> lengths(Post post, List<LengthRead> measured, Found pieces) {
    return Stream.concat(tapes.held(post, measured).stream(), pieces.lengths().stream()).toList();
  }

  /** All of it in one. */
  Told told(
      Post post, Tried tried, Found pieces, List<Amount> amounts, List<Size> named, TextRead cut) {
    QuestionsByModel.Asked asks =
        questionsByModel.joined(
            new QuestionsByModel.Asked(asked.in(post), questions.in(post)), tried.model());
    return new Told(
        tried.trials().trials(),
        tried.sizes(),
        pieces.edges(),
        design.in(post, amounts),
        pieces.making(),
        design.system(post, named, cut),
        tapes.method(post),
        asks.changes(),
        asks.questions());
  }
}
