package easewright.intake;

import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.intake.Reading.ReadYourself;
import easewright.intake.Reading.SignRead;
import easewright.number.TextSpan;
import easewright.number.WordLists;
import easewright.rulebook.Catalog.SignEntry;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Takes back a danger that its own sentence, or the next, plainly explains as none: a lump that was
 * a knot of thread, a thumb numb from pins, a difference that was always there. Nothing is taken
 * back where another danger was read that is not explained, or where a word in these sentences
 * leaves it open.
 */
final class Explained {
  private static final String THEN = ", then";
  private static final String UNLESS = ", unless";

  /** As many words may stand between the two parts of an explanation. */
  private static final int BETWEEN = 5;

  private final List<Kind> kinds = new ArrayList<>();

  /**
   * One way of explaining.
   *
   * @param danger id of the sign
   * @param name the danger as the catalog calls it
   * @param then what must follow soon; null where the first part is enough
   * @param unless what leaves it open
   */
  private record Kind(
      String danger, String name, NamedPhrases first, NamedPhrases then, NamedPhrases unless) {}

  Explained(Lexicon lexicon, Map<String, SignEntry> catalog) {
    WordLists lists = lexicon.lists();
    lists
        .pairs("explained dangers")
        .forEach(
            (list, danger) ->
                kinds.add(
                    new Kind(
                        danger,
                        catalog.get(danger).name(),
                        NamedPhrases.of(list, lexicon),
                        lists.isKnown(list + THEN) ? NamedPhrases.of(list + THEN, lexicon) : null,
                        NamedPhrases.of(list + UNLESS, lexicon))));
  }

  /**
   * Takes back what is explained.
   *
   * @param read signs, changed in place
   * @param danger whether a sign is one
   * @param readYourself changed in place
   */
  void takeBack(
      Post post, List<SignRead> read, Predicate<String> danger, List<ReadYourself> readYourself) {
    Set<String> open = new HashSet<>();
    read.stream()
        .filter(one -> one.present() && danger.test(one.id()))
        .filter(one -> kinds.stream().noneMatch(kind -> explains(kind, one, post)))
        .forEach(one -> open.add(one.id()));
    for (Kind kind : kinds) {
      if (open.isEmpty() && !kind.first().in(post).isEmpty()) {
        read.removeIf(one -> one.present() && explains(kind, one, post));
        readYourself.removeIf(one -> one.why().equals(kind.name()) && isBy(kind, one.span(), post));
      }
    }
  }

  private static boolean explains(Kind kind, SignRead danger, Post post) {
    return danger.id().equals(kind.danger()) && isBy(kind, danger.span(), post);
  }

  private static boolean isBy(Kind kind, TextSpan span, Post post) {
    Stretch from = post.sentenceOf(Whereabouts.wordAt(post, span.from()));
    Stretch to = post.sentenceOf(Whereabouts.wordAt(post, span.to() - 1));
    int before = from.first() == 0 ? 0 : post.sentenceOf(from.first() - 1).first();
    int end = post.words().size() - 1;
    int after = to.last() == end ? end : post.sentenceOf(to.last() + 1).last();
    return kind.unless().in(post).from(before, after).isEmpty()
        && kind.first().in(post).from(from.first(), after).stream()
            .anyMatch(one -> kind.then() == null || follows(one, kind.then().in(post), post));
  }

  private static boolean follows(Mention first, Mentions then, Post post) {
    return then.from(first.last() + 1, first.last() + 1 + BETWEEN).stream()
        .anyMatch(one -> post.sentence()[one.first()] == post.sentence()[first.last()]);
  }
}
