package easewright.intake;

import easewright.english.Stretch;
import easewright.english.Word;
import easewright.english.WordGaps;
import easewright.intake.Reading.SignRead;
import easewright.number.Amount;
import easewright.number.AmountRead;
import easewright.number.TextSpan;
import easewright.number.WordLists;
import easewright.rulebook.Catalog.SignEntry;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Signs that two numbers tell and no word does: a piece of the toile measured on its left and on
 * its right, "right side seam 11.5 cm, left 12.5"; the toile before and after a wash.
 */
final class SidesMeasured {
  private static final double SURE = 0.95;

  private final Map<String, SignEntry> catalog;

  /** By the piece that was measured, the sign of its sides being unequal; the narrower first. */
  private final Map<String, String> signs;

  /** By the way in which a wash changed a length, the sign of it. */
  private final Map<String, String> washed;

  private final double mostMm;

  SidesMeasured(Map<String, SignEntry> catalog, WordLists lists, double mostMm) {
    this.washed = lists.pairs("changed by a wash");
    this.catalog = catalog;
    this.mostMm = mostMm;
    this.signs = lists.pairs("unequal when measured");
  }

  /**
   * Adds such signs, unless they were read.
   *
   * @param read changed in place
   * @param amounts lengths that measure nothing else
   */
  void add(List<SignRead> read, Post post, List<Amount> amounts) {
    amounts.stream()
        .map(one -> Lengths.sentenceOf(one, post))
        .distinct()
        .forEach(sentence -> addWashed(read, sentence, post, amounts));
    for (Amount amount : amounts) {
      int sentence = Lengths.sentenceOf(amount, post);
      Stretch here = post.sentenceOf(Whereabouts.wordAt(post, amount.span().from()));
      Optional<Amount> differ =
          SidesCompared.difference(sentence, post, amounts)
              .filter(one -> one.mm("mm") <= mostMm); // what differs more is another piece
      if (differ.isPresent() && !post.says("of the body when measured", here)) {
        sign(here, post)
            .ifPresent(id -> add(id, differ.get(), post.span(here.first(), here.last()), read));
      }
    }
  }

  private void add(String id, Amount differ, TextSpan span, List<SignRead> read) {
    AmountRead amount = AmountRead.of(differ, "mm", 1);
    for (int i = 0; i < read.size(); i++) {
      SignRead one = read.get(i);
      if (one.id().equals(id)) {
        if (one.present() && one.amount() == null) {
          read.set(i, one.with(one.side(), amount));
        }
        return;
      }
    }
    addNew(id, amount, span, read);
  }

  private void addNew(String id, AmountRead amount, TextSpan span, List<SignRead> read) {
    String name = catalog.get(id).name();
    read.add(new SignRead(id, true, null, null, null, amount, name, span, SURE));
  }

  /** "70 cm round before the wash, 66 after": the larger before, the tighter it is now. */
  private void addWashed(List<SignRead> read, int sentence, Post post, List<Amount> amounts) {
    int first = WordGaps.firstOf(sentence, post.sentence());
    Stretch here = post.sentenceOf(first);
    if (post.says("lengths around", here) && post.says("washes", here)) {
      SidesCompared.pair("before", "after", sentence, post, amounts)
          .filter(pair -> pair.differMm() != 0)
          .ifPresent(
              pair -> {
                String id = washed.get(pair.differMm() > 0 ? "smaller" : "larger");
                read.removeIf(one -> washed.containsValue(one.id()) && !one.isSo(id));
                if (read.stream().noneMatch(one -> one.isSo(id))) {
                  addNew(id, null, post.span(here.first(), here.last()), read);
                }
              });
    }
  }

  private Optional<String> sign(Stretch here, Post post) {
    Set<String> words =
        post.words().subList(here.first(), here.last() + 1).stream()
            .map(Word::plain)
            .collect(Collectors.toSet());
    return signs.keySet().stream().filter(words::contains).findFirst().map(signs::get);
  }
}
