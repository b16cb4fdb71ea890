package easewright.intake;

import easewright.english.Stretch;
import easewright.intake.Reading.SignRead;
import easewright.number.Amount;
import easewright.number.AmountRead;
import easewright.number.TextSpan;
import easewright.rulebook.Catalog.SignEntry;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Signs that two lengths of one kind tell: hers and the garment's ("nipple to nipple 21 cm, on the
 * toile 18"), in front and at the back ("109 cm from the floor, the back 106"), before and now ("26
 * cm between the straps, with pins 21"). Their difference is the amount.
 */
final class LengthsCompared {
  /** So many words may lie between the two, and say what they are of. */
  private static final int FARTHEST = 30;

  /** As many words right before a length say best what it is of. */
  private static final int BESIDE = 6;

  /** Nothing but the two lengths tells the sign. */
  private static final double SURE = 0.8;

  private final Map<String, SignEntry> catalog;

  /** By what the first length is to the other, the sign of it. */
  private final Map<String, String> signs;

  /** What is shorter is no such length; mm. */
  private final double least;

  /** What differs less is the tape's error; mm. */
  private final double leastDifference;

  /** What differs more is something else; mm. */
  private final double mostDifference;

  LengthsCompared(Map<String, SignEntry> catalog, Lexicon lexicon) {
    this.catalog = catalog;
    this.signs = lexicon.lists().pairs("told by two lengths");
    this.least = lexicon.bounds().of("least-length-read");
    this.leastDifference = lexicon.bounds().of("least-difference-read");
    this.mostDifference = lexicon.bounds().of("largest-shift-read");
  }

  /**
   * Two lengths in the order of the text, with the words of their sentences.
   *
   * @param differMm by how much the first is longer
   */
  private record Pair(Amount one, Amount other, double differMm, Stretch words) {
    /** The difference as a length of its own, half of it where it lies on two sides. */
    Amount difference(int sides) {
      String mm =
          BigDecimal.valueOf(Math.abs(differMm) / sides)
              .setScale(1, RoundingMode.HALF_UP)
              .toPlainString();
      return new Amount(mm, "mm", span());
    }

    TextSpan span() {
      return one.span().with(other.span());
    }
  }

  /** Two lengths, and what they tell. */
  private record Found(Pair pair, String tells) {}

  /**
   * The same signs, and those that two lengths tell; their difference is the amount also where the
   * sign was read without one.
   *
   * @param numbers every number of the text, in order
   */
  List<SignRead> with(List<SignRead> read, Post post, List<Amount> numbers) {
    List<SignRead> all = new ArrayList<>(read);
    for (Found found : in(post, numbers)) {
      boolean twoSides = post.lists().has("differences of two sides", found.tells());
      Amount differ = found.pair().difference(twoSides ? 2 : 1);
      SignEntry sign = catalog.get(signs.get(found.tells()));
      add(sign, AmountRead.of(differ, "mm", 1), differ.span(), SURE, all);
    }
    return all;
  }

  /** The amounts without the lengths that tell such a sign: neither is an amount by itself. */
  List<Amount> free(List<Amount> amounts, Post post, List<Amount> numbers) {
    return AmountsLeft.free(
        amounts,
        in(post, numbers).stream()
            .flatMap(found -> Stream.of(found.pair().one().span(), found.pair().other().span()))
            .toList());
  }

  private List<Found> in(Post post, List<Amount> numbers) {
    List<Found> found = new ArrayList<>();
    for (int i = 0; i + 1 < numbers.size(); i++) {
      pair(numbers.get(i), numbers.get(i + 1), post)
          .flatMap(pair -> told(pair, post).map(tells -> new Found(pair, tells)))
          .ifPresent(found::add);
    }
    return found;
  }

  private Optional<Pair> pair(Amount one, Amount other, Post post) {
    if ("%".equals(one.unit()) || "%".equals(other.unit())) {
      return Optional.empty();
    }
    String unit = one.unit() == null ? other.unit() : one.unit();
    int first = Lengths.sentenceOf(one, post);
    if (unit == null || Lengths.sentenceOf(other, post) - first > 1) {
      return Optional.empty();
    }
    double differ = one.mm(unit) - other.mm(unit);
    boolean isOne =
        Math.min(one.mm(unit), other.mm(unit)) >= least
            && Math.abs(differ) >= leastDifference
            && Math.abs(differ) <= mostDifference;
    int begins = post.at(one);
    int ends = post.at(other);
    Stretch words =
        new Stretch(
            Math.max(post.sentenceOf(begins).first(), begins - FARTHEST),
            Math.min(post.sentenceOf(ends).last(), ends + FARTHEST));
    return isOne && ends - begins <= FARTHEST
        ? Optional.of(new Pair(one, other, differ, words))
        : Optional.empty();
  }

  /** What the lengths tell, in the words of the list of such signs. */
  private Optional<String> told(Pair pair, Post post) {
    if (post.says("measured from the floor", pair.words(), 4)) {
      return order("of the front", "of the back", pair, post)
          .map(front -> front > 0 ? "front higher" : "back higher");
    }
    if (post.says("measured between the straps", pair.words(), 4)) {
      return order("as it was", "as it is pinned", pair, post)
          .map(was -> was > 0 ? "straps farther apart" : "straps nearer");
    }
    boolean apart = post.says("measured apart", pair.words(), 4);
    boolean down = post.says("measured down", pair.words(), 4);
    if (apart == down || !post.says("fullest points", pair.words(), 4)) {
      return Optional.empty();
    }
    return order("of the wearer", "of the garment", pair, post)
        .map(
            hers ->
                apart
                    ? hers > 0 ? "farther apart" : "nearer together"
                    : hers > 0 ? "lower" : "higher");
  }

  /** By how much what is said of the one kind is longer than what is said of the other; mm. */
  private static Optional<Double> order(String kind, String other, Pair pair, Post post) {
    int one = near(kind, other, pair.one(), pair, post);
    int second = near(kind, other, pair.other(), pair, post);
    if (one == second || one == 0 && second == 0) {
      return Optional.empty();
    }
    return Optional.of(one > 0 || second < 0 ? pair.differMm() : -pair.differMm());
  }

  /** Which of two kinds is said right before a length, or else after it: 1, -1, or 0 for none. */
  private static int near(String kind, String other, Amount amount, Pair pair, Post post) {
    int at = post.at(amount);
    boolean first = amount == pair.one();
    int from = first ? pair.words().first() : post.at(pair.one()) + 1;
    int to = first ? post.at(pair.other()) - 1 : pair.words().last();
    IntStream before = IntStream.iterate(at - 1, i -> i >= Math.max(from, at - BESIDE), i -> i - 1);
    IntStream farther = IntStream.iterate(at - BESIDE - 1, i -> i >= from, i -> i - 1);
    return IntStream.concat(before, IntStream.concat(IntStream.rangeClosed(at + 1, to), farther))
        .map(
            i ->
                post.lists().has(kind, post.words().get(i).plain())
                    ? 1
                    : post.lists().has(other, post.words().get(i).plain()) ? -1 : 0)
        .filter(said -> said != 0)
        .findFirst()
        .orElse(0);
  }

  /** Adds a sign with its amount, or the amount where the sign was read as present. */
  static void add(
      SignEntry sign, AmountRead amount, TextSpan span, double sure, List<SignRead> read) {
    if (read.stream().noneMatch(one -> one.id().equals(sign.id()))) {
      String name = sign.name();
      read.add(new SignRead(sign.id(), true, null, null, null, amount, name, span, sure));
    } else {
      read.replaceAll(one -> one.isSo(sign.id()) ? one.with(one.side(), amount) : one);
    }
  }
}
