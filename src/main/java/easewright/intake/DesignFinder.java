package easewright.intake;

import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.intake.Reading.TextRead;
import easewright.intake.Sizes.Size;
import easewright.number.Amount;
import easewright.number.WordLists;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Finds the design of the garment, what stretch its pattern asks, and the system of its size. */
final class DesignFinder {
  private static final double SURE = 0.85;

  /** So far before a design what denies it or sets it elsewhere is looked for, in words. */
  private static final int FARTHEST_NO = 8;

  /** As far as a percentage may stand from what asks for it and from its "stretch", in words. */
  private static final int FARTHEST_ASKED = 8;

  /** As many words as may stand between a size and its system. */
  private static final int FARTHEST_SYSTEM = 4;

  private final NamedPhrases designs;
  private final NamedPhrases asked;
  private final NamedPhrases systems;
  private final WordLists lists;

  DesignFinder(Lexicon lexicon) {
    this.lists = lexicon.lists();
    this.designs = NamedPhrases.ofPairs("designs", lexicon);
    this.asked = NamedPhrases.of("asked of the cloth", lexicon);
    this.systems = NamedPhrases.ofPairs("systems of sizes", lexicon);
  }

  /** Each a field of the design and its value: "back racer", "stretchAsked 60 %". */
  List<TextRead> in(Post post, List<Amount> amounts) {
    Map<String, TextRead> found = new LinkedHashMap<>();
    for (Mention one : designs.in(post)) {
      String field = one.name().substring(0, one.name().indexOf(' '));
      if (isOfThis(one, post)) {
        found.putIfAbsent(
            field, new TextRead(one.name(), post.span(one.first(), one.last()), SURE));
      }
    }
    Mentions asked = this.asked.in(post);
    for (Amount amount : amounts) {
      int first = Whereabouts.wordAt(post, amount.span().from());
      int last = Whereabouts.wordAt(post, amount.span().to() - 1);
      if ("%".equals(amount.unit()) && isAsked(first, last, asked, post)) {
        put("stretchAsked", amount, found);
      } else if (amount.isLength() && isAllowance(first, last, post)) {
        put("seamAllowance", amount, found);
      }
    }
    return List.copyOf(found.values());
  }

  private static void put(String field, Amount amount, Map<String, TextRead> found) {
    found.putIfAbsent(
        field, new TextRead(field + " " + amount.text(amount.unit()), amount.span(), SURE));
  }

  /** Neither denied nor wished for nor of another garment. */
  private boolean isOfThis(Mention one, Post post) {
    int from = Math.max(post.clauseOf(one.first()).first(), one.first() - FARTHEST_NO);
    for (int i = from; i < one.first(); i++) {
      if (lists.has("no such design", post.words().get(i).plain())) {
        return false;
      }
    }
    return !Whereabouts.isAsked(post, one.first())
        && !post.cueInClause("elsewhere", one.first())
        && !post.cueInClause("other thing", one.first());
  }

  private static boolean isAsked(int first, int last, Mentions asked, Post post) {
    boolean wanted =
        asked.from(first - FARTHEST_ASKED, first - 1).stream()
            .anyMatch(one -> post.sentence()[one.first()] == post.sentence()[first]);
    Stretch sentence = post.sentenceOf(first);
    boolean stretch = false;
    int to = Math.min(sentence.last(), last + FARTHEST_ASKED);
    for (int i = Math.max(sentence.first(), first - FARTHEST_ASKED); i <= to; i++) {
      stretch |= post.words().get(i).stem().equals("stretch");
    }
    return wanted && stretch;
  }

  /** "The pattern has 1 cm seam allowances." */
  private boolean isAllowance(int first, int last, Post post) {
    boolean allowance =
        post.mentions().named("seam allowance").from(last + 1, last + 2).stream()
            .anyMatch(one -> post.sentence()[one.first()] == post.sentence()[first]);
    Stretch sentence = post.sentenceOf(first);
    boolean pattern = false;
    for (int i = sentence.first(); i < first; i++) {
      pattern |= lists.has("of the pattern", post.words().get(i).plain());
    }
    return allowance && pattern;
  }

  /** "A UK 34D", "36DD in US sizing"; null when not said of the size that was cut. */
  TextRead system(Post post, List<Size> named, TextRead cut) {
    if (cut == null || post.words().isEmpty()) {
      return null;
    }
    Mentions systems = this.systems.in(post);
    for (Size size : named) {
      if (!size.span().touches(cut.span())) {
        continue;
      }
      int at = Whereabouts.wordAt(post, size.span().from());
      int last = Whereabouts.wordAt(post, size.span().to() - 1);
      for (Mention one : systems.from(at - FARTHEST_SYSTEM, last + FARTHEST_SYSTEM)) {
        boolean before = one.last() < at;
        boolean beside =
            before
                ? onlySmall(one.last() + 1, at - 1, post)
                : one.first() > last && onlySmall(last + 1, one.first() - 1, post);
        if (beside && post.sentence()[one.first()] == post.sentence()[at]) {
          return new TextRead(one.name(), post.span(one.first(), one.last()), SURE);
        }
      }
    }
    return null;
  }

  private boolean onlySmall(int from, int to, Post post) {
    for (int i = from; i <= to; i++) {
      if (!lists.has("beside a system", post.words().get(i).plain())) {
        return false;
      }
    }
    return true;
  }
}
