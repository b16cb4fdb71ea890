package easewright.intake;

import easewright.english.Mention;
import easewright.english.Stretch;
import easewright.intake.Reading.SignRead;
import easewright.number.Amount;
import easewright.number.TextSpan;
import easewright.rulebook.Catalog.SignEntry;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Gives lengths that nothing has claimed to signs that lack one: the only such sign of the same
 * sentence, else that of the sentences right before, where this one says more of it: "It gapes.
 * About an inch.", "I can pinch 2 cm."
 */
final class AmountsTold {
  /** A sentence of no more words than these goes on with what was said. */
  private static final int SHORT = 6;

  /** As many sentences later an amount may be told. */
  private static final int FARTHEST = 3;

  /** As many words beside an amount may say that it is of something taken up. */
  private static final int NEAR = 8;

  private final Signs signs;
  private final Map<String, SignEntry> catalog;
  private final Lexicon lexicon;
  private final double mostMm;
  private final double mostShiftMm;
  private final SidesMeasured sides;
  private final PlannedLengths planned;
  private final LengthsCompared compared;

  AmountsTold(Signs signs, Map<String, SignEntry> catalog, Lexicon lexicon) {
    this.planned = new PlannedLengths(catalog, lexicon);
    this.compared = new LengthsCompared(catalog, lexicon);
    this.signs = signs;
    this.catalog = catalog;
    this.lexicon = lexicon;
    this.mostMm = lexicon.bounds().of("largest-amount-of-a-sign-read");
    this.sides = new SidesMeasured(catalog, lexicon.lists(), mostMm);
    this.mostShiftMm = lexicon.bounds().of("largest-shift-read");
  }

  /**
   * The same signs, more of them with amounts.
   *
   * @param unmeasured lengths that measure nothing else
   * @param numbers every number of the text, in order
   */
  List<SignRead> on(List<SignRead> read, Post post, List<Amount> unmeasured, List<Amount> numbers) {
    List<SignRead> all = compared.with(read, post, numbers);
    List<Amount> amounts = compared.free(unmeasured, post, numbers);
    sides.add(all, post, amounts);
    planned.add(all, post, amounts);
    for (Amount amount : amounts) {
      if (amount.isLength()
          && amount.mm("mm") <= mostMm
          && isFree(amount, all)
          && !isOfBefore(amount, amounts, post)) {
        int at = owner(amount, all, post);
        if (at >= 0) {
          SignRead one = all.get(at);
          all.set(at, one.with(one.side(), signs.amount(one.id(), amount, post, amounts)));
        }
      }
    }
    all.replaceAll(one -> isNoShift(one, post) ? one.withoutAmount() : one);
    return all;
  }

  /** "The fullest point is 24.5 cm below the shoulder, mine is at 27 cm": neither is the shift. */
  private boolean isNoShift(SignRead one, Post post) {
    return one.amount() != null
        && post.lists().has("signs of a shift", one.id())
        && one.amount().mm() > mostShiftMm;
  }

  /** "Before it was 3 cm, now it is 1 cm": the first is over. */
  private static boolean isOfBefore(Amount amount, List<Amount> amounts, Post post) {
    int sentence = Lengths.sentenceOf(amount, post);
    return !SignAmounts.isNow(amount, post)
        && amounts.stream()
            .anyMatch(
                one -> Lengths.sentenceOf(one, post) == sentence && SignAmounts.isNow(one, post));
  }

  private static boolean isFree(Amount amount, List<SignRead> read) {
    String text = amount.text("mm");
    return read.stream()
        .map(SignRead::amount)
        .noneMatch(one -> one != null && one.from().equals(text));
  }

  /** The index of the sign that an amount is of; -1 where that is not plain. */
  private int owner(Amount amount, List<SignRead> read, Post post) {
    int sentence = Lengths.sentenceOf(amount, post);
    for (int before = 0; before <= FARTHEST && before <= sentence; before++) {
      List<Integer> here = new ArrayList<>();
      for (int i = 0; i < read.size(); i++) {
        SignRead one = read.get(i);
        if (one.present()
            && catalog.get(one.id()).amount() != null
            && sentenceOf(one.span(), post) == sentence - before) {
          here.add(i);
        }
      }
      if (!here.isEmpty()) {
        boolean plain =
            here.size() == 1
                && read.get(here.get(0)).amount() == null
                && (before == 0 || saysMore(amount, sentence - before, post));
        return plain ? here.get(0) : -1;
      }
    }
    return -1;
  }

  private static int sentenceOf(TextSpan span, Post post) {
    return post.sentence()[Whereabouts.wordAt(post, span.to() - 1)];
  }

  /**
   * It is short, says how it is now, or speaks of cloth taken up, and names no piece that the
   * sign's sentence lacks.
   */
  private boolean saysMore(Amount amount, int of, Post post) {
    int at = Whereabouts.wordAt(post, amount.span().from());
    Stretch here = post.sentenceOf(at);
    List<String> known =
        post.mentions(of, of).stream().map(Mention::name).filter(lexicon::isPart).toList();
    boolean another =
        post.mentionsInClause(post.clause()[at]).stream()
            .map(Mention::name)
            .anyMatch(name -> isPiece(name, lexicon, post) && !known.contains(name));
    boolean goesOn =
        post.sentence()[at] == of + 1
            && (here.last() - here.first() < SHORT || SignAmounts.isNow(amount, post));
    return !another && (goesOn || isTakenUp(at, here, post) || isOfAFoldBefore(here, post));
  }

  /** "When I pinch it the rest goes smooth. It takes 1 cm of cloth." */
  private static boolean isOfAFoldBefore(Stretch here, Post post) {
    return here.first() > 0
        && post.lists().has("more of it", post.words().get(here.first()).plain())
        && post.says("pinched", post.sentenceOf(here.first() - 1));
  }

  /** Whether a name is that of a piece, and not of the cloth that every piece is of. */
  static boolean isPiece(String name, Lexicon lexicon, Post post) {
    return lexicon.isPart(name) && !post.lists().has("cloth of any piece", name);
  }

  private static boolean isTakenUp(int at, Stretch here, Post post) {
    return post.says(
        "pinched",
        new Stretch(Math.max(here.first(), at - NEAR), Math.min(here.last(), at + NEAR)));
  }
}
