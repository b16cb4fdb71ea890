package easewright.intake;

import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Puts the names of measurements and the amounts beside them together. */
final class NamedAmounts {
  private static final int FARTHEST = 5;

  /** Words that may stand between two names, or two amounts, of one list. */
  private static final int IN_LIST = 2;

  private static final double LEAST_GIRTH = 20;

  private final Phrases phrases;
  private final Set<String> parts;

  NamedAmounts(EverydayWords words, Speech speech) {
    this.phrases = new Phrases(speech, 1).add(words.measurements());
    this.parts = words.parts().keySet();
  }

  /**
   * A name beside an amount.
   *
   * @param first index of the first word of the name
   * @param last index of its last word
   */
  record Pair(String name, Amount amount, int first, int last) {
    Pair(Mention name, Amount amount) {
      this(name.name(), amount, name.first(), name.last());
    }
  }

  List<Pair> in(Post post, List<Amount> amounts) {
    List<Mention> said = names(post);
    List<Pair> pairs = new ArrayList<>();
    for (int sentence = 0; sentence < post.sentences(); sentence++) {
      int here = sentence;
      List<Mention> names =
          said.stream().filter(one -> post.sentence()[one.first()] == here).toList();
      List<Amount> values =
          amounts.stream().filter(one -> Lengths.sentenceOf(one, post) == here).toList();
      List<Pair> list = listed(post, names, values);
      pairs.addAll(list.isEmpty() ? besides(post, names, values) : list);
      over(post, values).stream()
          .filter(one -> pairs.stream().noneMatch(pair -> pair.amount() == one.amount()))
          .forEach(pairs::add);
    }
    return pairs;
  }

  /**
   * The longest names; none of a piece ("bust seam"), none with a number within ("under 34 bust").
   */
  private List<Mention> names(Post post) {
    List<Mention> all = phrases.in(post.words(), post.sentence());
    all.removeIf(one -> holdsAnother(one, post));
    return all.stream()
        .filter(
            one ->
                Stream.concat(all.stream(), pieces(post))
                    .noneMatch(
                        other ->
                            other.words() > one.words()
                                && other.first() <= one.first()
                                && one.last() <= other.last()))
        .toList();
  }

  private Stream<Mention> pieces(Post post) {
    return post.mentions().stream()
        .filter(one -> parts.contains(one.name()) && !one.name().equals("band"));
  }

  private static boolean holdsAnother(Mention name, Post post) {
    for (int i = name.first() + 1; i < name.last(); i++) {
      String word = post.words().get(i).plain();
      if (Character.isDigit(word.charAt(0)) || word.matches("and|or|over|is")) {
        return true;
      }
    }
    return post.strongest(name.first(), name.last()).compareTo(Post.Break.PAUSE) >= 0;
  }

  /** "Bust and underbust are 96 and 79": as many names as amounts, one list after the other. */
  private static List<Pair> listed(Post post, List<Mention> names, List<Amount> values) {
    if (names.size() < 2 || names.size() != values.size()) {
      return List.of();
    }
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      boolean near =
          i == 0
              || names.get(i).first() - names.get(i - 1).last() - 1 <= IN_LIST
                  && between(post, values.get(i - 1).span(), values.get(i).span()) <= IN_LIST;
      if (!near) {
        return List.of();
      }
      pairs.add(new Pair(names.get(i), values.get(i)));
    }
    Span last = span(post, names.get(names.size() - 1));
    Span first = values.get(0).span();
    return last.to() <= first.from() && between(post, last, first) <= FARTHEST ? pairs : List.of();
  }

  /**
   * "Bust 38, under 33" reads forward, "38 bust 33 under" backward; a sentence mostly keeps its
   * way, and what is left over is read the other way if it stands close.
   */
  private List<Pair> besides(Post post, List<Mention> names, List<Amount> values) {
    List<Pair> forward = besides(post, names, values, true, FARTHEST);
    List<Pair> backward = besides(post, names, values, false, FARTHEST);
    boolean first =
        !names.isEmpty()
            && !values.isEmpty()
            && span(post, names.get(0)).from() < values.get(0).span().from();
    boolean ahead = forward.size() > backward.size() || forward.size() == backward.size() && first;
    List<Pair> pairs = new ArrayList<>(ahead ? forward : backward);
    List<Mention> free = new ArrayList<>(names);
    free.removeIf(name -> pairs.stream().anyMatch(pair -> pair.first() == name.first()));
    List<Amount> left = new ArrayList<>(values);
    left.removeIf(value -> pairs.stream().anyMatch(pair -> pair.amount() == value));
    pairs.addAll(besides(post, free, left, !ahead, IN_LIST));
    return pairs;
  }

  private List<Pair> besides(
      Post post, List<Mention> names, List<Amount> values, boolean forward, int farthest) {
    List<Pair> pairs = new ArrayList<>();
    List<Mention> free = new ArrayList<>(names);
    for (Amount value : values) {
      Mention name = beside(post, free, value, forward, farthest);
      if (name != null) {
        free.remove(name);
        pairs.add(new Pair(name, value));
      }
    }
    return pairs;
  }

  private Mention beside(
      Post post, List<Mention> names, Amount value, boolean forward, int farthest) {
    return names.stream()
        .filter(
            name -> {
              Span span = span(post, name);
              boolean side =
                  forward ? span.to() <= value.span().from() : value.span().to() <= span.from();
              return side
                  && between(post, span, value.span()) <= farthest
                  && isFree(post, span, value.span());
            })
        .min(
            Comparator.comparingInt(
                name -> Math.abs(span(post, name).from() - value.span().from())))
        .orElse(null);
  }

  /** Whether no piece of the garment is named between: "bust fits, the strap is 38 cm". */
  private boolean isFree(Post post, Span one, Span other) {
    int from = Math.min(one.to(), other.to());
    int to = Math.max(one.from(), other.from());
    return pieces(post)
        .map(piece -> span(post, piece))
        .noneMatch(piece -> piece.from() >= from && piece.to() <= to);
  }

  /** "34 1/2 over 29 1/4": the bust over what is under it. */
  private static List<Pair> over(Post post, List<Amount> values) {
    for (int i = 0; i + 1 < values.size(); i++) {
      Amount bust = values.get(i);
      Amount under = values.get(i + 1);
      String between = post.text().substring(bust.span().to(), under.span().from()).strip();
      if (between.equalsIgnoreCase("over")
          && under.value() >= LEAST_GIRTH
          && bust.value() > under.value()
          && bust.value() < 1.6 * under.value()) {
        int word = Whereabouts.wordAt(post, bust.span().to());
        return List.of(
            new Pair("bust", bust, word, word), new Pair("underbust", under, word, word));
      }
    }
    return List.of();
  }

  private static int between(Post post, Span one, Span other) {
    return Whereabouts.wordsBetween(post, one, other);
  }

  private static Span span(Post post, Mention name) {
    return post.span(name.first(), name.last());
  }
}
