package easewright.intake;

import easewright.intake.Reading.LengthRead;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Finds what was measured on the body and on the toile. */
final class Lengths {
  /** No girth is read outside these; inches end where centimetres begin. */
  private static final double LEAST_INCHES = 20;

  private static final double MOST_INCHES = 56;
  private static final double MOST_CM = 180;
  private static final int FARTHEST = 5;

  private final Phrases names;
  private final Phrases flat;

  Lengths(EverydayWords words, Speech speech) {
    this.names = new Phrases(speech, 1).add(words.measurements());
    this.flat = new Phrases(speech, 3);
    for (String phrase : words.cues().get("on the table")) {
      flat.add("on the table", phrase);
    }
  }

  /** A name beside an amount. */
  private record Pair(String name, Amount amount, int from, int to) {}

  List<LengthRead> in(Post post, List<Amount> amounts) {
    List<Mention> said = longest(names.in(post.words(), post.sentence()));
    List<Mention> onTheTable = flat.in(post.words(), post.sentence());
    String unit = unit(amounts);
    Map<String, LengthRead> found = new LinkedHashMap<>();
    for (Pair pair : pairs(post, said, amounts)) {
      Amount amount = pair.amount();
      String assumed = unitOf(amount, unit, pair.name());
      if (assumed == null || !isPossible(amount, assumed, pair.name())) {
        continue;
      }
      boolean garment =
          onTheTable.stream()
              .anyMatch(cue -> post.sentence()[cue.first()] == post.sentence()[pair.from()]);
      String name = garment && pair.name().equals("underbust") ? "underband" : pair.name();
      if (garment && !List.of("bust", "underband").contains(name)) {
        continue;
      }
      found.putIfAbsent(
          (garment ? "garment/" : "body/") + name,
          new LengthRead(
              garment ? "garment" : "body",
              name,
              amount.text(assumed),
              amount.unit() == null,
              amount.span().with(post.span(pair.from(), pair.to())),
              amount.unit() == null ? 0.8 : 0.95));
    }
    return new ArrayList<>(found.values());
  }

  private static List<Mention> longest(List<Mention> all) {
    return all.stream()
        .filter(
            one ->
                all.stream()
                    .noneMatch(
                        other ->
                            other.words() > one.words()
                                && other.first() <= one.first()
                                && one.last() <= other.last()))
        .toList();
  }

  /** "Bust 38, under 33" reads forward, "38 bust 33 under" backward; a sentence keeps its way. */
  private static List<Pair> pairs(Post post, List<Mention> said, List<Amount> amounts) {
    List<Pair> pairs = new ArrayList<>();
    for (int sentence = 0; sentence < post.sentences(); sentence++) {
      int here = sentence;
      List<Mention> names =
          said.stream().filter(one -> post.sentence()[one.first()] == here).toList();
      List<Amount> values = amounts.stream().filter(one -> sentenceOf(one, post) == here).toList();
      if (names.isEmpty() || values.isEmpty()) {
        continue;
      }
      boolean forward = forwardFits(post, names, values);
      List<Mention> free = new ArrayList<>(names);
      for (Amount value : values) {
        Mention name = beside(post, free, value, forward);
        if (name != null) {
          free.remove(name);
          pairs.add(new Pair(name.name(), value, name.first(), name.last()));
        }
      }
    }
    return pairs;
  }

  private static boolean forwardFits(Post post, List<Mention> names, List<Amount> values) {
    int forward = 0;
    int backward = 0;
    for (Amount value : values) {
      forward += beside(post, names, value, true) == null ? 0 : 1;
      backward += beside(post, names, value, false) == null ? 0 : 1;
    }
    Span first = post.span(names.get(0).first(), names.get(0).last());
    return forward > backward || forward == backward && first.from() < values.get(0).span().from();
  }

  private static Mention beside(Post post, List<Mention> names, Amount value, boolean forward) {
    return names.stream()
        .filter(
            name -> {
              Span span = post.span(name.first(), name.last());
              return forward
                  ? span.to() <= value.span().from()
                      && between(post, span.to(), value.span().from()) <= FARTHEST
                  : value.span().to() <= span.from()
                      && between(post, value.span().to(), span.from()) <= FARTHEST;
            })
        .min(
            Comparator.comparingInt(
                name -> Math.abs(post.words().get(name.first()).from() - value.span().from())))
        .orElse(null);
  }

  private static long between(Post post, int from, int to) {
    return post.words().stream().filter(word -> word.from() >= from && word.to() <= to).count();
  }

  static int sentenceOf(Amount amount, Post post) {
    int sentence = 0;
    for (int i = 0; i < post.words().size(); i++) {
      if (post.words().get(i).from() <= amount.span().from()) {
        sentence = post.sentence()[i];
      }
    }
    return sentence;
  }

  /** The unit of the girths that have one. */
  private static String unit(List<Amount> amounts) {
    return amounts.stream()
        .filter(one -> "in".equals(one.unit()) || "cm".equals(one.unit()))
        .filter(
            one ->
                one.value() >= LEAST_INCHES
                    || one.quantity("mm").isPresent()
                        && one.quantity("mm").get().number() >= LEAST_INCHES)
        .map(Amount::unit)
        .findFirst()
        .orElse(null);
  }

  private static String unitOf(Amount amount, String usual, String name) {
    if (amount.unit() != null) {
      return amount.isLength() ? amount.unit() : null;
    }
    double number = amount.value();
    if (name.equals("bust") || name.equals("underbust") || name.equals("upperChest")) {
      return number < MOST_INCHES ? "in" : "cm";
    }
    return usual;
  }

  private static boolean isPossible(Amount amount, String unit, String name) {
    double number = amount.quantity(unit).map(one -> one.number()).orElse(0.0);
    boolean girth = name.equals("bust") || name.equals("underbust") || name.equals("upperChest");
    return switch (unit) {
      case "in" -> number >= (girth ? LEAST_INCHES : 4) && number <= 70;
      case "cm" -> number >= (girth ? 45 : 10) && number <= MOST_CM;
      case "mm" -> number >= (girth ? 450 : 100) && number <= 1800;
      default -> false;
    };
  }
}
