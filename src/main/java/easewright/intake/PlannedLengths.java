package easewright.intake;

import easewright.english.Mention;
import easewright.intake.Reading.SignRead;
import easewright.number.Amount;
import easewright.number.AmountRead;
import easewright.rulebook.Catalog.SignEntry;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;

/**
 * Elastics that were cut otherwise than planned, told by two numbers: "I cut the elastic at 74 cm.
 * The sheet says 70."
 */
final class PlannedLengths {
  private static final String ELASTIC = "elastic";

  /** As many words may lie between an elastic and its length. */
  private static final int NEAR = 8;

  /** No word says which piece was planned so long. */
  private static final double PERHAPS = 0.7;

  private final Map<String, SignEntry> catalog;
  private final Map<String, String> signs;
  private final Lexicon lexicon;

  /** What is shorter is the width of an elastic; mm. */
  private final double least;

  /** What differs more is another piece; mm. */
  private final double most;

  PlannedLengths(Map<String, SignEntry> catalog, Lexicon lexicon) {
    this.catalog = catalog;
    this.lexicon = lexicon;
    this.signs = lexicon.lists().pairs("cut otherwise than planned");
    this.least = lexicon.bounds().of("shortest-edge");
    this.most = lexicon.bounds().of("largest-amount-of-a-sign-read");
  }

  /**
   * Adds the sign, or the difference to the sign where it was read without.
   *
   * @param read changed in place
   * @param amounts lengths that measure nothing else
   */
  void add(List<SignRead> read, Post post, List<Amount> amounts) {
    List<Amount> lengths =
        amounts.stream().filter(one -> one.unit() == null || one.isLength()).toList();
    for (int i = 0; i + 1 < lengths.size(); i++) {
      Amount one = lengths.get(i);
      Amount other = lengths.get(i + 1);
      String unit = one.isLength() ? one.unit() : other.unit();
      boolean planned = isPlanned(one, post);
      if (unit != null
          && planned != isPlanned(other, post)
          && isBeside(one, other, post)
          && isOfElastic(one, other, post)) {
        compare(planned ? other : one, planned ? one : other, unit, read, post);
      }
    }
  }

  private void compare(Amount cut, Amount plan, String unit, List<SignRead> read, Post post) {
    double differ = cut.mm(unit) - plan.mm(unit);
    if (Math.min(cut.mm(unit), plan.mm(unit)) < least || differ == 0 || Math.abs(differ) > most) {
      return;
    }
    String id = signs.get(differ > 0 ? "longer" : "shorter");
    String mm =
        BigDecimal.valueOf(Math.abs(differ)).setScale(1, RoundingMode.HALF_UP).toPlainString();
    AmountRead amount = AmountRead.of(new Amount(mm, "mm", cut.span().with(plan.span())), "mm", 1);
    read.removeIf(one -> signs.containsValue(one.id()) && !one.id().equals(id));
    LengthsCompared.add(catalog.get(id), amount, cut.span().with(plan.span()), PERHAPS, read);
  }

  private static boolean isBeside(Amount one, Amount other, Post post) {
    return Lengths.sentenceOf(other, post) - Lengths.sentenceOf(one, post) <= 1;
  }

  private static boolean isPlanned(Amount amount, Post post) {
    int at = Whereabouts.wordAt(post, amount.span().from());
    return post.says("as it was planned", post.clauseOf(at));
  }

  /** The elastic stands before the first length, in its sentence, and no piece before the other. */
  private boolean isOfElastic(Amount one, Amount other, Post post) {
    int first = Whereabouts.wordAt(post, one.span().from());
    int second = Whereabouts.wordAt(post, other.span().from());
    boolean elastic = false;
    for (int i = Math.max(post.sentenceOf(first).first(), first - NEAR); i < first; i++) {
      elastic |= post.lists().has("elastics", post.words().get(i).plain());
    }
    return elastic
        && post.mentions().from(first, second).stream()
            .map(Mention::name)
            .noneMatch(name -> AmountsTold.isPiece(name, lexicon, post) && !name.equals(ELASTIC));
  }
}
