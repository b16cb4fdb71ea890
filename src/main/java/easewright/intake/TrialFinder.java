package easewright.intake;

import easewright.english.Break;
import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.intake.Told.TrialRead;
import easewright.number.Amount;
import easewright.reading.OutcomesSaid;
import easewright.reading.TrainedReading;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Finds changes that were held, pinned or basted for a look, and what was seen. What is said of a
 * trial is not said of the toile: a sign that a trial ends is there without it.
 */
final class TrialFinder {
  /** As far as the way of trying may stand from the change, in words. */
  private static final int FARTHEST_WAY = 6;

  /** As far before a change as is looked for what makes it a plan or a question, in words. */
  private static final int FARTHEST_PLAN = 8;

  /** As far before "to" as may be told who was asked to do it, in words. */
  private static final int FARTHEST_ASKED = 3;

  private final Wordings changes;
  private final NamedPhrases ways;
  private final TrialOutcome outcomes;
  private final TrialsHeldOut heldOut;
  private final TrialsByModel byModel;
  private final AmountsByModel amountsByModel;
  private final ChangeAmounts lengths;

  /**
   * Trials of a text.
   *
   * @param taken words that speak of trials
   * @param tests words that tell of a test of the book, which is a sign
   * @param there signs that are there without the trial
   */
  record Found(List<TrialRead> trials, BitSet taken, BitSet tests, List<Match> there) {}

  TrialFinder(RuleBookSource book, Lexicon lexicon) {
    Map<String, List<String>> phrases = new LinkedHashMap<>(book.everyday().changes());
    book.everyday()
        .trials()
        .forEach(
            (id, more) ->
                phrases.merge(
                    id,
                    more,
                    (one, other) -> {
                      List<String> both = new ArrayList<>(one);
                      both.addAll(other);
                      return both;
                    }));
    this.changes = new Wordings(phrases, lexicon, 2);
    this.ways = NamedPhrases.ofPairs("ways of trying", lexicon);
    this.outcomes = new TrialOutcome(lexicon);
    this.lengths = new ChangeAmounts(book, lexicon);
    this.byModel = new TrialsByModel(book, lengths, changes);
    this.amountsByModel = new AmountsByModel(book, lexicon.bounds().of("largest-change-read"));
    this.heldOut = new TrialsHeldOut(book, lexicon, changes, outcomes);
  }

  /**
   * @param said signs named anywhere in the text
   * @param model what a trained model read, if any did
   */
  Found in(Post post, List<Amount> amounts, SaidWhere said, Optional<TrainedReading> model) {
    Found found = new Found(new ArrayList<>(), new BitSet(), new BitSet(), new ArrayList<>());
    named(post, amounts, said, found);
    heldOut.add(post, amounts, said, model, found);
    model.ifPresent(
        read -> {
          OutcomesSaid outcomes = new OutcomesSaid(read);
          found.trials().replaceAll(one -> one.thatDid(outcomes));
          byModel.add(post, amounts, said, read, found);
          amountsByModel.add(post, amounts, read, byModel.aimed(post, said, read), found.trials());
        });
    found
        .trials()
        .removeIf(
            one ->
                one.amount() == null
                    && one.outcome() == null
                    && found.trials().stream().anyMatch(other -> isFuller(other, one)));
    found.trials().sort(Comparator.comparingInt(one -> one.span().from()));
    return found;
  }

  /** Adds trials that name their change. */
  private void named(Post post, List<Amount> amounts, SaidWhere said, Found found) {
    Mentions ways = this.ways.in(post);
    if (ways.isEmpty()) {
      return;
    }
    List<Match> tried = new ArrayList<>(changes.in(post, amounts));
    // "Pinned the band 2 cm looser": what says which way goes before what says only how.
    tried.sort(Comparator.comparing(match -> isOnlyHow(match, ways)));
    for (Match match : tried) {
      Mention way = wayOf(match, ways, post);
      if (way != null
          && !isSubject(match, way, post)
          && !found.taken().get(match.first())
          && isTried(match, way, post)) {
        add(match, way, post, amounts, said, found);
      }
    }
  }

  /** "With that pinned out the cups are right": what is spoken of next, not what was pinned. */
  private static boolean isSubject(Match match, Mention way, Post post) {
    int next = match.last() + 1;
    return way.last() < match.last()
        && next < post.words().size()
        && post.lists().has("verbs of a piece", post.words().get(next).plain())
        && post.lists().has("pointing back", before(way, post));
  }

  private static String before(Mention way, Post post) {
    return way.first() == 0 ? "" : post.words().get(way.first() - 1).plain();
  }

  /** "With the extender in": the trial told before. */
  private static boolean isFuller(TrialRead other, TrialRead bare) {
    return other.adjustment().equals(bare.adjustment())
        && (other.amount() != null || other.outcome() != null);
  }

  private static boolean isOnlyHow(Match match, Mentions ways) {
    return !ways.from(match.first(), match.last()).isEmpty();
  }

  private void add(
      Match match, Mention way, Post post, List<Amount> amounts, SaidWhere said, Found found) {
    String id = match.saying().of();
    int first = Math.min(match.first(), way.first());
    int last = Math.max(match.last(), way.last());
    Optional<Amount> amount =
        lengths.nearest(first, last, post, amounts).or(() -> lengths.takenUp(last, post, amounts));
    if (amount.isEmpty() && isTestOfItsOwn(way, said, post)) {
      found.tests().set(first, last + 1);
      return;
    }
    Stretch trial = new Stretch(first, last);
    TrialOutcome.Seen seen = outcomes.of(trial, partsOf(match), said, post);
    found
        .trials()
        .add(
            new TrialRead(
                id,
                lengths.ofTrial(id, amount, post, amounts),
                way.name(),
                seen.outcome(),
                amount
                    .map(one -> one.span().with(post.span(first, last)))
                    .orElse(post.span(first, last)),
                match.confidence()));
    found.taken().set(first, last + 1);
    found.taken().or(seen.words());
    found.there().addAll(seen.there());
  }

  /** "If I lift the strap the gape closes" is a sign of the book, not a change with an amount. */
  private static boolean isTestOfItsOwn(Mention way, SaidWhere said, Post post) {
    return said.from(way.first() - FARTHEST_WAY, way.last() + FARTHEST_WAY).stream()
        .filter(one -> one.said().stream().anyMatch(word -> word.covers(way.first())))
        .anyMatch(one -> Polarity.of(one, post) == Polarity.Meant.SO);
  }

  private static Set<String> partsOf(Match match) {
    return match.said().stream()
        .map(Mention::name)
        .filter(name -> !name.startsWith("="))
        .collect(Collectors.toSet());
  }

  /** The way of trying named within the change or right beside it. */
  private static Mention wayOf(Match match, Mentions ways, Post post) {
    int first = match.first();
    int last = match.last();
    Mention best = null;
    for (Mention way : ways.from(first - FARTHEST_WAY, last + FARTHEST_WAY)) {
      boolean beside =
          post.sentence()[way.first()] == post.sentence()[first]
              && post.strongest(Math.min(way.last(), first), Math.max(way.first(), last))
                      .compareTo(Break.TURN)
                  < 0
              && post.clause()[way.first()] == post.clause()[first]
              && (way.first() < first || isSaidOfThePiece(match, way, post));
      if (beside && (best == null || distance(way, first, last) < distance(best, first, last))) {
        best = way;
      }
    }
    return best;
  }

  /** "The straps pinned shorter", "pinned the straps"; not "the cups hold me in", "pinned it". */
  private static boolean isSaidOfThePiece(Match match, Mention way, Post post) {
    boolean begins = way.first() == match.first();
    boolean named =
        match.said().stream()
            .noneMatch(
                one ->
                    post.lists().has("words for a piece", post.words().get(one.first()).plain()));
    String word = post.words().get(way.last()).plain();
    return begins ? named : post.lists().has("tried after its piece", word);
  }

  private static int distance(Mention way, int first, int last) {
    return Math.max(0, Math.max(first - way.last(), way.first() - last));
  }

  /** Told as done: not planned, asked or denied. */
  private static boolean isTried(Match match, Mention way, Post post) {
    int first = Math.min(match.first(), way.first());
    int from = Math.max(Whereabouts.clauseStart(post, first), first - FARTHEST_PLAN);
    for (int i = from; i < first; i++) {
      if (post.lists().has("not tried", post.words().get(i).plain()) && !isHadDone(i, post)) {
        return false;
      }
    }
    return true;
  }

  /** "I asked her to hold them": done by another. */
  private static boolean isHadDone(int to, Post post) {
    for (int i = Math.max(0, to - FARTHEST_ASKED); i < to; i++) {
      if (post.lists().has("had it done", post.words().get(i).plain())) {
        return post.words().get(to).plain().equals("to");
      }
    }
    return false;
  }
}
