package easewright.intake;

import easewright.english.Stretch;
import easewright.intake.Told.TrialRead;
import easewright.number.Amount;
import easewright.number.AmountRead;
import easewright.reading.SentenceSaid;
import easewright.reading.TrainedReading;
import easewright.reading.TrialSaid;
import easewright.reading.TrialsSaid;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.ChangeAims;
import easewright.rulebook.RuleBookSource;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Trials whose change is not named, as the trained model reads them from what was done and seen.
 */
final class TrialsByModel {
  /** From here on the model is sure enough that a sentence tells of a sign. */
  private static final double SIGN = 0.4;

  /** From here on, that it tells of a sign that is a trial itself. */
  private static final double TEST = 0.6;

  /** As many words may stand between a length and what tells what it measures. */
  private static final int BESIDE = 3;

  /** A change that nothing she complains of asks for is so much less likely. */
  private static final double WITHOUT_AIM = 0.15;

  /** So sure the model must be of such a change all the same. */
  private static final double SURE_WITHOUT_AIM = 0.9;

  private static final String RIGHT = "right";

  private static final String SEEN_AT_ONCE = "glance";

  /** How it was tried, since nothing says that it was sewn for good. */
  private static final String HELD = "held";

  private final ChangeAmounts lengths;

  /** Signs that are trials themselves, or give the amount of a change. */
  private final Set<String> tests;

  private final ChangeAims aims;
  private final Wordings changes;

  /**
   * @param changes finds changes that are named
   */
  TrialsByModel(RuleBookSource book, ChangeAmounts lengths, Wordings changes) {
    this.changes = changes;
    this.lengths = lengths;
    this.aims = new ChangeAims(book);
    this.tests =
        book.catalog().signs().values().stream()
            .filter(
                one ->
                    one.proves() != null
                        || one.measures() != null && !SEEN_AT_ONCE.equals(one.effort()))
            .map(SignEntry::id)
            .collect(Collectors.toSet());
  }

  /** Adds to the trials that the words found those of other sentences. */
  void add(
      Post post, List<Amount> amounts, SaidWhere said, TrainedReading model, TrialFinder.Found to) {
    List<Match> made = changes.in(post, amounts);
    Predicate<String> aimed = aimed(post, said, model);
    for (TrialSaid one :
        new TrialsSaid(
                model,
                change -> aimed.test(change) ? 1 : WITHOUT_AIM,
                (sentence, change) -> isNamed(change, words(sentence, post), made))
            .in(each -> !isTaken(each, post, to) && !isTest(each, post, said))) {
      if (!aimed.test(one.change()) && one.sure() < SURE_WITHOUT_AIM) {
        continue;
      }
      Stretch told = words(one.told(), post);
      Stretch all = new Stretch(told.first(), words(one.last(), post).last());
      if (!RIGHT.equals(one.outcome()) && made.stream().anyMatch(each -> isIn(told, each))) {
        continue; // a change that was made, whose harm and help the words tell apart
      }
      Optional<Amount> amount = length(all, post, amounts);
      to.trials()
          .add(
              new TrialRead(
                  one.change(),
                  of(one.change(), amount, all, post, amounts),
                  HELD,
                  one.outcome(),
                  post.span(told.first(), told.last()),
                  one.sure()));
      to.taken().set(all.first(), all.last() + 1);
    }
  }

  /** Whether something that the text complains of asks for a change; so it is where nothing is. */
  Predicate<String> aimed(Post post, SaidWhere said, TrainedReading model) {
    Set<String> complaints = complaints(post, said, model);
    return change -> complaints.isEmpty() || !Collections.disjoint(complaints, aims.of(change));
  }

  private static boolean isNamed(String change, Stretch here, List<Match> made) {
    return made.stream().anyMatch(one -> one.saying().of().equals(change) && isIn(here, one));
  }

  private static boolean isIn(Stretch here, Match one) {
    return here.first() <= one.first() && one.last() <= here.last();
  }

  /** Signs that the text says are there, as either reader finds them. */
  private static Set<String> complaints(Post post, SaidWhere said, TrainedReading model) {
    Set<String> found = new HashSet<>(model.reported(SIGN));
    said.all().stream()
        .filter(one -> Polarity.of(one, post) == Polarity.Meant.SO)
        .forEach(one -> found.add(one.saying().of()));
    return found;
  }

  private static Stretch words(SentenceSaid sentence, Post post) {
    return new Stretch(
        Whereabouts.wordAt(post, sentence.from()), Whereabouts.wordAt(post, sentence.to() - 1));
  }

  /** Whether the words read a trial in this sentence. */
  private static boolean isTaken(SentenceSaid sentence, Post post, TrialFinder.Found found) {
    Stretch words = words(sentence, post);
    return !found.taken().get(words.first(), words.last() + 1).isEmpty()
        || !found.tests().get(words.first(), words.last() + 1).isEmpty();
  }

  /** Whether it tells of a sign that is a trial itself, which is read with its amount. */
  private boolean isTest(SentenceSaid sentence, Post post, SaidWhere said) {
    Stretch words = words(sentence, post);
    return said.from(words.first(), words.last()).stream()
            .anyMatch(one -> tests.contains(one.saying().of()))
        || tests.stream()
            .anyMatch(one -> sentence.knows(one) && sentence.said(one).reported() >= TEST);
  }

  /** All the cloth of a fold, wherever in these sentences the fold is named. */
  private AmountRead of(
      String change, Optional<Amount> amount, Stretch here, Post post, List<Amount> amounts) {
    return amount.isPresent() && FoldedCloth.namesFold(here, post)
        ? lengths.heldOut(change, amount.get(), post, amounts)
        : lengths.ofTrial(change, amount, post, amounts);
  }

  /**
   * The length told there of cloth that is taken up or of a gap that opens, else the first; not how
   * far something was unpicked.
   */
  private Optional<Amount> length(Stretch here, Post post, List<Amount> amounts) {
    return amounts.stream()
        .filter(lengths::mayBeOfAChange)
        .filter(one -> here.first() <= post.at(one) && post.at(one) <= here.last())
        .filter(one -> !isBeside("extent before a length", one, post))
        .min(
            Comparator.comparing(
                one ->
                    !FoldedCloth.isCloth(one, post)
                        && !isBeside("gap beside a length", one, post)));
  }

  /** Whether a word of a list stands right before or after a length. */
  private static boolean isBeside(String list, Amount amount, Post post) {
    int first = Whereabouts.wordAt(post, amount.span().from());
    int last = Whereabouts.wordAt(post, amount.span().to() - 1);
    Stretch sentence = post.sentenceOf(first);
    return post.says(
            list, new Stretch(Math.max(sentence.first(), first - BESIDE), first - 1), BESIDE)
        || post.says(list, new Stretch(last + 1, Math.min(sentence.last(), last + BESIDE)), BESIDE);
  }
}
