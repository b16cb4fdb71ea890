package easewright.intake;

import easewright.english.Break;
import easewright.english.Mention;
import easewright.english.Phrases;
import easewright.number.Amount;
import easewright.number.TextSpan;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Puts the names of measurements and the amounts beside them together. */
final class NamedAmounts {
  private static final int FARTHEST = 5;

  /** Words that may stand between two names, or two amounts, of one list. */
  private static final int IN_LIST = 2;

  /** No post tells more; a text of nothing but numbers shall not take long. */
  private static final int MOST_AMOUNTS = 100;

  private final Phrases phrases;
  private final Set<String> parts;

  private final double leastGirth;
  private final double mostRatio;

  NamedAmounts(EverydayWords words, Lexicon lexicon) {
    this.leastGirth = lexicon.bounds().of("least-girth-in-inches");
    this.mostRatio = lexicon.bounds().of("greatest-bust-to-underbust");
    this.phrases = new Phrases(lexicon.speech(), 1).add(words.measurements());
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
    BitSet pieces = new BitSet();
    pieces(post).forEach(one -> pieces.set(one.first()));
    Map<Integer, List<Mention>> names =
        names(post).stream().collect(Collectors.groupingBy(one -> post.sentence()[one.first()]));
    Map<Integer, List<Amount>> values =
        amounts.stream()
            .limit(MOST_AMOUNTS)
            .collect(
                Collectors.groupingBy(
                    one -> Lengths.sentenceOf(one, post), TreeMap::new, Collectors.toList()));
    List<Pair> pairs = new ArrayList<>();
    values.forEach(
        (sentence, here) -> {
          List<Mention> named = names.getOrDefault(sentence, List.of());
          List<Pair> list = listed(post, named, here);
          pairs.addAll(list.isEmpty() ? besides(post, named, here, pieces) : list);
          over(post, here).stream()
              .filter(one -> pairs.stream().noneMatch(pair -> pair.amount() == one.amount()))
              .forEach(pairs::add);
        });
    return pairs;
  }

  /**
   * The longest names; none of a piece ("bust seam"), none with a number within ("under 34 bust").
   */
  private List<Mention> names(Post post) {
    List<Mention> all = phrases.in(post.words(), post.sentence());
    all.removeIf(one -> holdsAnother(one, post));
    int[] longest = new int[post.words().size()];
    Stream.concat(all.stream(), pieces(post))
        .forEach(
            one -> {
              for (int i = one.first(); i <= one.last(); i++) {
                longest[i] = Math.max(longest[i], one.words());
              }
            });
    return all.stream()
        .filter(one -> Math.min(longest[one.first()], longest[one.last()]) <= one.words())
        .toList();
  }

  /** Pieces of the garment but the band, which is itself measured. */
  private Stream<Mention> pieces(Post post) {
    return post.mentions().stream()
        .filter(one -> parts.contains(one.name()) && !one.name().equals("band"));
  }

  private static boolean holdsAnother(Mention name, Post post) {
    for (int i = name.first() + 1; i < name.last(); i++) {
      String word = post.words().get(i).plain();
      if (Character.isDigit(word.charAt(0)) || post.lists().has("between two names", word)) {
        return true;
      }
    }
    return post.strongest(name.first(), name.last()).compareTo(Break.PAUSE) >= 0;
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
    TextSpan last = span(post, names.get(names.size() - 1));
    TextSpan first = values.get(0).span();
    return last.to() <= first.from() && between(post, last, first) <= FARTHEST ? pairs : List.of();
  }

  /**
   * "Bust 38, under 33" reads forward, "38 bust 33 under" backward; a sentence mostly keeps its
   * way, and what is left over is read the other way if it stands close.
   */
  private static List<Pair> besides(
      Post post, List<Mention> names, List<Amount> values, BitSet pieces) {
    List<Pair> forward = besides(post, names, values, pieces, true, FARTHEST);
    List<Pair> backward = besides(post, names, values, pieces, false, FARTHEST);
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
    pairs.addAll(besides(post, free, left, pieces, !ahead, IN_LIST));
    return pairs;
  }

  private static List<Pair> besides(
      Post post,
      List<Mention> names,
      List<Amount> values,
      BitSet pieces,
      boolean forward,
      int farthest) {
    List<Pair> pairs = new ArrayList<>();
    List<Mention> free = new ArrayList<>(names);
    for (Amount value : values) {
      Mention name = beside(post, free, value, pieces, forward, farthest);
      if (name != null) {
        free.remove(name);
        pairs.add(new Pair(name, value));
      }
    }
    return pairs;
  }

  private static Mention beside(
      Post post, List<Mention> names, Amount value, BitSet pieces, boolean forward, int farthest) {
    return names.stream()
        .filter(
            name -> {
              TextSpan span = span(post, name);
              boolean side =
                  forward ? span.to() <= value.span().from() : value.span().to() <= span.from();
              return side
                  && between(post, span, value.span()) <= farthest
                  && isFree(post, span, value.span(), pieces);
            })
        .min(
            Comparator.comparingInt(
                name -> Math.abs(span(post, name).from() - value.span().from())))
        .orElse(null);
  }

  /** Whether no piece of the garment is named between: "bust fits, the strap is 38 cm". */
  private static boolean isFree(Post post, TextSpan one, TextSpan other, BitSet pieces) {
    int from = Whereabouts.wordAt(post, Math.min(one.to(), other.to()) - 1);
    int to = Whereabouts.wordAt(post, Math.max(one.from(), other.from()));
    int piece = pieces.nextSetBit(from + 1);
    return piece < 0 || piece >= to;
  }

  /** "34 1/2 over 29 1/4": the bust over what is under it. */
  private List<Pair> over(Post post, List<Amount> values) {
    for (int i = 0; i + 1 < values.size(); i++) {
      Amount bust = values.get(i);
      Amount under = values.get(i + 1);
      String between = post.text().substring(bust.span().to(), under.span().from()).strip();
      if (between.equalsIgnoreCase("over")
          && under.value() >= leastGirth
          && bust.value() > under.value()
          && bust.value() < mostRatio * under.value()) {
        int word = Whereabouts.wordAt(post, bust.span().to());
        return List.of(
            new Pair("bust", bust, word, word), new Pair("underbust", under, word, word));
      }
    }
    return List.of();
  }

  private static int between(Post post, TextSpan one, TextSpan other) {
    return Whereabouts.wordsBetween(post, one, other);
  }

  private static TextSpan span(Post post, Mention name) {
    return post.span(name.first(), name.last());
  }
}
