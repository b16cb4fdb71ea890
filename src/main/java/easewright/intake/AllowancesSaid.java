package easewright.intake;

import easewright.english.Stretch;
import easewright.intake.Reading.TextRead;
import easewright.number.Amount;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * How wide the seam allowances were planned and sewn, told by two lengths, and at how many seams:
 * "the paper says 6 mm and I sewed at 10, all four seams".
 */
final class AllowancesSaid {
  private static final double SURE = 0.85;

  /** As many words around them may say what they are of. */
  private static final int FARTHEST = 30;

  private static final int LONGEST = 3;

  private final NamedPhrases seams;
  private final double mostMm;

  AllowancesSaid(Lexicon lexicon) {
    this.seams = NamedPhrases.ofPairs("numbers of seams", lexicon);
    this.mostMm = lexicon.bounds().of("widest-seam-allowance");
  }

  /** Each a field of how it was made and its value: "seamAllowanceSewn 10 mm". */
  List<TextRead> in(Post post, List<Amount> numbers) {
    for (int i = 0; i + 1 < numbers.size(); i++) {
      Amount one = numbers.get(i);
      Amount other = numbers.get(i + 1);
      String unit = one.isLength() ? one.unit() : other.isLength() ? other.unit() : null;
      if (unit != null && areAllowances(one, other, unit, post)) {
        int ofOne = planned(one, post);
        int ofOther = planned(other, post);
        if (ofOne != ofOther) {
          List<TextRead> found = new ArrayList<>();
          found.add(read("seamAllowancePlanned", ofOne < ofOther ? one : other, unit));
          found.add(read("seamAllowanceSewn", ofOne < ofOther ? other : one, unit));
          addSeams(post, found);
          return found;
        }
      }
    }
    return List.of();
  }

  /** How many words lie between a length and what says, in its sentence, that it was planned. */
  private static int planned(Amount amount, Post post) {
    int at = post.at(amount);
    Stretch here = around(at, at, post);
    int nearest = Integer.MAX_VALUE;
    for (int i = here.first(); i <= here.last(); i++) {
      if (post.lists().has("an allowance as planned", post.words().get(i).plain())) {
        nearest = Math.min(nearest, Math.abs(i - at));
      }
    }
    return nearest;
  }

  private boolean areAllowances(Amount one, Amount other, String unit, Post post) {
    int first = post.at(one);
    int last = post.at(other);
    return isSmall(one, unit)
        && isSmall(other, unit)
        && one.mm(unit) != other.mm(unit)
        && last - first <= FARTHEST
        && Lengths.sentenceOf(other, post) - Lengths.sentenceOf(one, post) <= 1
        && post.says("sewing of seams", around(first, first, post))
        && post.says("sewing of seams", around(last, last, post))
        && !post.says("elastics", around(first, last, post))
        && !post.says("of one side", around(first, last, post), LONGEST); // left beside right
  }

  /** Their sentences, as far as they belong to them. */
  private static Stretch around(int first, int last, Post post) {
    return new Stretch(
        Math.max(post.sentenceOf(first).first(), first - FARTHEST),
        Math.min(post.sentenceOf(last).last(), last + FARTHEST));
  }

  private boolean isSmall(Amount one, String unit) {
    return !"%".equals(one.unit()) && one.mm(unit) <= mostMm;
  }

  private static TextRead read(String field, Amount amount, String unit) {
    return new TextRead(field + " " + amount.text(unit), amount.span(), SURE);
  }

  private void addSeams(Post post, List<TextRead> found) {
    seams.in(post).stream()
        .max(Comparator.comparingInt(one -> Integer.parseInt(one.name())))
        .map(one -> new TextRead("seams " + one.name(), post.span(one.first(), one.last()), SURE))
        .ifPresent(found::add);
  }
}
