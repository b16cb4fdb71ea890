package easewright.intake;

import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.intake.NamedAmounts.Pair;
import easewright.intake.Reading.LengthRead;
import easewright.measure.Quantity;
import easewright.number.Amount;
import easewright.number.ReadingBounds;
import easewright.number.TextSpan;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds what was measured on the body and on the toile. */
final class Lengths {
  private static final double SURE = 0.95;
  private static final double ASSUMED = 0.8;
  private static final double SIGNED = 0.6;

  private static final String BUST = "bust";
  private static final String UNDERBUST = "underbust";
  private static final String UNDERBAND = "underband";
  private static final Set<String> GIRTHS = Set.of(BUST, UNDERBUST, "upperChest", UNDERBAND);

  private final NamedAmounts named;
  private final OtherNumbers others;
  private final NamedPhrases half;
  private final ReadingBounds bounds;

  /**
   * What was measured.
   *
   * @param lengths by name, each once
   * @param asked ranges too wide to be one measurement: the writer is asked for one
   */
  record Measured(List<LengthRead> lengths, List<TextSpan> asked) {}

  Lengths(EverydayWords words, Lexicon lexicon) {
    this.bounds = lexicon.bounds();
    this.named = new NamedAmounts(words, lexicon);
    this.half = NamedPhrases.of("half of the way round", lexicon);
    Set<String> names = new HashSet<>();
    words.measurements().values().stream()
        .flatMap(List::stream)
        .forEach(name -> names.addAll(List.of(name.split(" "))));
    this.others = new OtherNumbers(lexicon, names);
  }

  Measured in(Post post, List<Amount> all) {
    List<Amount> amounts = others.without(post, all);
    List<TextSpan> asked = new ArrayList<>();
    String unit = unit(amounts);
    List<Pair> pairs = named.in(post, amounts);
    Mentions half = this.half.in(post);
    Map<String, LengthRead> found = new LinkedHashMap<>();
    for (Pair pair : pairs) {
      boolean garment = isOnTheTable(pair, pairs, post);
      boolean drafted = garment && isOfThePattern(pair, post);
      Amount amount =
          garment && isHalf(pair.amount(), half, post) ? pair.amount().doubled() : pair.amount();
      String name = garment && pair.name().equals(UNDERBUST) ? UNDERBAND : pair.name();
      String assumed = unitOf(amount, unit, name);
      boolean ofGarment = name.equals(BUST) || name.equals(UNDERBAND);
      if (assumed == null
          || !isPossible(amount, assumed, name)
          || (garment ? !ofGarment : name.equals(UNDERBAND))
          || !drafted && isOfAnother(pair, post)) {
        continue;
      }
      if (amount.halfWidthMm(assumed) > bounds.of("widest-half-range-read")) {
        asked.add(amount.span());
        continue;
      }
      boolean signed = hasSign(amount, post);
      TextSpan span =
          signed ? new TextSpan(amount.span().from() - 1, amount.span().to()) : amount.span();
      LengthRead read =
          new LengthRead(
              drafted ? "design/drafted" : garment ? "garment" : "body",
              name,
              amount.middle(assumed),
              Map.of(),
              amount.unit() == null,
              span.with(post.span(pair.first(), pair.last())),
              signed ? SIGNED : amount.unit() == null ? ASSUMED : SURE);
      if (post.cueInClause("now", wordOf(amount, post))) {
        found.put(read.of() + name, read);
      } else {
        found.putIfAbsent(read.of() + name, read);
      }
    }
    return new Measured(consistent(found), asked);
  }

  /** "The pattern says the finished bust is 82": drafted so, not measured. */
  private static boolean isOfThePattern(Pair pair, Post post) {
    Stretch sentence = post.sentenceOf(pair.first());
    for (int i = sentence.first(); i <= sentence.last(); i++) {
      if (post.lists().has("of the pattern", post.words().get(i).plain())) {
        return true;
      }
    }
    return false;
  }

  /** "34 cm across": once across a band laid flat is half of the way round. */
  private static boolean isHalf(Amount amount, Mentions half, Post post) {
    int last = Whereabouts.wordAt(post, amount.span().to() - 1);
    return half.from(last + 1, last + 2).stream()
        .anyMatch(one -> post.sentence()[one.first()] == post.sentence()[last]);
  }

  /** "-77 cm": a dash before it or a slip; no length is negative, so it is read less surely. */
  private static boolean hasSign(Amount amount, Post post) {
    int before = amount.span().from() - 1;
    return before >= 0 && "-−–".indexOf(post.text().charAt(before)) >= 0;
  }

  /** Nobody is wider under the bust than around it: two such were read the wrong way. */
  private static List<LengthRead> consistent(Map<String, LengthRead> found) {
    List<LengthRead> all = new ArrayList<>(found.values());
    LengthRead bust = found.get("body" + BUST);
    LengthRead under = found.get("body" + UNDERBUST);
    if (bust != null && under != null && mm(under) > mm(bust)) {
      all.remove(bust);
      all.remove(under);
    }
    return all;
  }

  private static double mm(LengthRead read) {
    return Quantity.parse(read.text()).length().mm();
  }

  /** A cue reaches what stands in its clause, and on over a list that it begins. */
  private static boolean isOnTheTable(Pair pair, List<Pair> pairs, Post post) {
    int at = wordOf(pair.amount(), post);
    for (Mention cue : post.cues("on the table")) {
      if (post.sentence()[cue.first()] != post.sentence()[at]) {
        continue;
      }
      int clause = post.clause()[cue.first()];
      boolean own = pairs.stream().anyMatch(one -> isIn(one, clause, post));
      boolean later = pairs.stream().anyMatch(one -> post.clause()[one.first()] > clause);
      boolean begins =
          pairs.stream().noneMatch(one -> isIn(one, clause, post) && one.first() < cue.first());
      boolean reachesOn = begins && post.clause()[at] > clause && !isOfWearer(cue, at, post);
      boolean reachesBack = !own && !later && post.clause()[at] == clause - 1;
      if (isIn(pair, clause, post) || reachesOn || reachesBack) {
        return true;
      }
    }
    return false;
  }

  private static boolean isIn(Pair pair, int clause, Post post) {
    return post.clause()[pair.first()] == clause
        || post.clause()[wordOf(pair.amount(), post)] == clause;
  }

  /** Whether the wearer comes up in a clause after the one of the cue, up to this word's. */
  private static boolean isOfWearer(Mention cue, int at, Post post) {
    for (int i = cue.last() + 1; i < post.words().size(); i++) {
      int clause = post.clause()[i];
      if (clause > post.clause()[cue.last()]
          && clause <= post.clause()[at]
          && post.lists().has("wearer", post.words().get(i).plain())) {
        return true;
      }
    }
    return false;
  }

  /** What a chart says, and what was before, is not measured now. */
  private static boolean isOfAnother(Pair pair, Post post) {
    int at = wordOf(pair.amount(), post);
    return post.cueInClause("by the chart", at)
        || post.cueInClause("by the chart", pair.first())
        || post.cueInClause("past", at)
        || post.cueInClause("behind me", at);
  }

  private static int wordOf(Amount amount, Post post) {
    return Whereabouts.wordAt(post, amount.span().from());
  }

  static int sentenceOf(Amount amount, Post post) {
    return post.words().isEmpty() ? 0 : post.sentence()[wordOf(amount, post)];
  }

  /** The unit of the girths that have one. */
  private String unit(List<Amount> amounts) {
    return amounts.stream()
        .filter(one -> "in".equals(one.unit()) || "cm".equals(one.unit()))
        .filter(one -> one.value() >= bounds.of("least-girth-in-inches"))
        .map(Amount::unit)
        .findFirst()
        .orElse(null);
  }

  private String unitOf(Amount amount, String usual, String name) {
    if (amount.unit() != null) {
      return amount.isLength() ? amount.unit() : null;
    }
    if (GIRTHS.contains(name)) {
      return amount.value() < bounds.of("bare-girths-in-centimetres-from") ? "in" : "cm";
    }
    return usual;
  }

  /**
   * Whether an amount with a unit can be this measurement of a body.
   *
   * @param others what else was measured
   */
  boolean isPossible(Amount amount, String name, List<LengthRead> others) {
    List<LengthRead> all = new ArrayList<>(others);
    all.add(
        new LengthRead("body", name, amount.text(null), Map.of(), false, amount.span(), ASSUMED));
    Map<String, LengthRead> byName = new LinkedHashMap<>();
    all.forEach(one -> byName.put(one.of() + one.name(), one));
    return isPossible(amount, amount.unit(), name) && consistent(byName).size() == byName.size();
  }

  private boolean isPossible(Amount amount, String unit, String name) {
    boolean girth = GIRTHS.contains(name);
    if (unit.equals("in")) {
      return amount.value() >= bounds.of(girth ? "least-girth-in-inches" : "least-length-in-inches")
          && amount.value() <= bounds.of("greatest-length-in-inches");
    }
    double mm = unit.equals("cm") ? amount.value() * 10 : amount.value();
    return !unit.equals("%")
        && mm >= bounds.of(girth ? "least-girth-read" : "least-length-read")
        && mm <= bounds.of("greatest-length-read");
  }
}
