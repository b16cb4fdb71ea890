package easewright.intake;

import easewright.english.Mention;
import easewright.english.Stretch;
import easewright.intake.Told.TrialRead;
import easewright.number.Amount;
import easewright.reading.TrainedReading;
import easewright.rulebook.RuleBookSource;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Trials that name no change and only say that cloth is held out, and what came of it. */
final class TrialsHeldOut {
  /** How sure the change is that was not named. */
  private static final double PERHAPS = 0.8;

  private final Lexicon lexicon;
  private final HeldOut heldOut;
  private final Wordings changes;
  private final TrialOutcome outcomes;
  private final ChangeAmounts lengths;

  /**
   * @param changes finds changes that are named
   */
  TrialsHeldOut(RuleBookSource book, Lexicon lexicon, Wordings changes, TrialOutcome outcomes) {
    this.lexicon = lexicon;
    this.heldOut = new HeldOut(book, lexicon);
    this.changes = changes;
    this.outcomes = outcomes;
    this.lengths = new ChangeAmounts(book, lexicon);
  }

  /**
   * Adds the trials of a text to those that were found.
   *
   * @param model what a trained model read, if any did
   */
  void add(
      Post post,
      List<Amount> amounts,
      SaidWhere said,
      Optional<TrainedReading> model,
      TrialFinder.Found found) {
    BitSet tried = (BitSet) found.taken().clone();
    tried.or(found.tests());
    FaultsSaid faults = new FaultsSaid(heldOut.faults(), said.all(), model, tried, post);
    List<HeldOut.Held> held = heldOut.in(post, amounts, faults, found.taken());
    List<Match> made = held.isEmpty() ? List.of() : changes.in(post, amounts);
    for (HeldOut.Held one : held) {
      if (one.sure() || made.stream().noneMatch(match -> isOf(match, one, post))) {
        add(one, post, amounts, said, found);
      }
    }
  }

  /** "I folded a wedge out of the neckline": a change that is named, and made for all we know. */
  private static boolean isOf(Match change, HeldOut.Held held, Post post) {
    return post.sentence()[change.first()] == post.sentence()[held.words().first()];
  }

  /** What only says that cloth is held out is a trial where it says what came of it. */
  private void add(
      HeldOut.Held held, Post post, List<Amount> amounts, SaidWhere said, TrialFinder.Found found) {
    Set<String> parts = isMeasuredLater(held, post) ? Set.of() : partsOf(held, post);
    TrialOutcome.Seen seen = outcomes.of(held.words(), parts, said, post);
    if (seen.outcome() == null && isMeasuredLater(held, post)) {
      seen = outcomes.of(held.way(), parts, said, post);
    }
    boolean within = !isMeasuredLater(held, post) && outcomes.isRight(held.words(), post);
    String outcome = within ? TrialOutcome.RIGHT : seen.outcome();
    if (outcome != null) {
      found
          .trials()
          .add(
              new TrialRead(
                  held.adjustment(),
                  lengths.heldOut(held.adjustment(), held.amount(), post, amounts),
                  held.how(),
                  outcome,
                  post.span(held.words().first(), held.words().last()),
                  PERHAPS));
      found.taken().set(held.words().first(), held.words().last() + 1);
      found.taken().or(seen.words());
      found.there().addAll(seen.there());
    }
  }

  /** The pieces that cloth is held out of, where they are named. */
  private Set<String> partsOf(HeldOut.Held held, Post post) {
    return post.mentions().from(held.words().first(), held.words().last()).stream()
        .map(Mention::name)
        .filter(name -> AmountsTold.isPiece(name, lexicon, post))
        .collect(Collectors.toSet());
  }

  /** "When I pinch it the rest goes smooth. It takes 1 cm": what came of it is told first. */
  private static boolean isMeasuredLater(HeldOut.Held held, Post post) {
    Stretch words = held.words();
    return post.sentence()[words.last()] > post.sentence()[held.way().last()];
  }
}
