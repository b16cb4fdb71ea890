package easewright.intake;

import easewright.english.Break;
import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.TextRead;
import easewright.intake.Told.EdgeRead;
import easewright.number.Amount;
import easewright.number.TextSpan;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Finds what was measured of straps, edges and their elastics, and of the cloth of the band. A
 * piece and its length belong together where nothing but words of measuring stands between.
 */
final class PieceLengths {
  private static final double SURE = 0.9;

  /** As many words as may stand between a piece and its length. */
  private static final int FARTHEST = 9;

  private static final String STRAP = "strap";

  private final NamedPhrases bandCloth;
  private final EdgeWords edgeWords;
  private final Map<String, String> edges;
  private final double shortestEdge;
  private final double leastGirth;

  /**
   * What was found.
   *
   * @param lengths of straps and of the cloth of the band
   * @param making how the seams were sewn
   */
  record Found(
      List<LengthRead> lengths, List<EdgeRead> edges, List<TextRead> making, List<TextSpan> taken) {

    Found with(List<TextRead> sewn) {
      Stream<TextSpan> more = sewn.stream().map(TextRead::span);
      return new Found(lengths, edges, sewn, Stream.concat(taken.stream(), more).toList());
    }
  }

  PieceLengths(RuleBookSource book, Lexicon lexicon) {
    this.bandCloth = NamedPhrases.of("cloth of the band", lexicon);
    this.edgeWords = new EdgeWords(book, lexicon);
    this.edges = lexicon.lists().pairs("edges of pieces");
    this.shortestEdge = book.parameter("shortest-edge");
    this.leastGirth = book.parameter("least-girth-of-a-garment");
  }

  Found in(Post post, List<Amount> amounts) {
    Map<String, LengthRead> lengths = new LinkedHashMap<>();
    List<TextSpan> taken = new ArrayList<>();
    EdgesSaid edges = edgeWords.of(post);
    Mentions cloths = bandCloth.in(post);
    String unit =
        amounts.stream().filter(Amount::isLength).map(Amount::unit).findFirst().orElse("cm");
    for (Amount amount : amounts) {
      int first = Whereabouts.wordAt(post, amount.span().from());
      int last = Whereabouts.wordAt(post, amount.span().to() - 1);
      if ("%".equals(amount.unit()) || isDifference(last, post) || isElsewhere(first, post)) {
        continue;
      }
      double mm = amount.mm(unit);
      Mention cloth = before(cloths, first, post);
      Mention piece = piece(first, last, post);
      boolean put = false;
      if (cloth != null && mm >= leastGirth) {
        put = put("bandCloth", amount, unit, cloth, lengths, post);
      } else if (edges.isOfElastic(first, last)) {
        put = edges.addElastic(amount, unit, first, last, isWide(first, last, post));
      } else if (piece != null && piece.name().equals(STRAP)) {
        boolean wide = isWide(first, last, post);
        String name = wide ? "strapWidth" : "strapLength";
        put = (wide || mm >= shortestEdge) && put(name, amount, unit, piece, lengths, post);
      } else if (piece != null && mm >= shortestEdge) {
        edges.addLength(amount, unit, piece);
        put = true;
      }
      if (put) {
        taken.add(amount.span());
      }
    }
    return new Found(List.copyOf(lengths.values()), edges.read(), List.of(), taken);
  }

  private static boolean put(
      String name,
      Amount amount,
      String unit,
      Mention piece,
      Map<String, LengthRead> lengths,
      Post post) {
    TextSpan span = amount.span().with(post.span(piece.first(), piece.last()));
    lengths.putIfAbsent(
        name,
        new LengthRead(
            "garment", name, amount.middle(unit), Map.of(), amount.unit() == null, span, SURE));
    return true;
  }

  /** "2 cm too long", "8 cm below": how far, not how long. */
  private static boolean isDifference(int last, Post post) {
    return last + 1 < post.words().size()
        && post.breaks().get(last + 1).compareTo(Break.PAUSE) < 0
        && post.lists().has("no length before", post.words().get(last + 1).plain());
  }

  private static boolean isElsewhere(int word, Post post) {
    Stretch sentence = post.sentenceOf(word);
    boolean pattern = false;
    for (int i = sentence.first(); i <= sentence.last(); i++) {
      pattern |= post.lists().has("of the pattern", post.words().get(i).plain());
    }
    return pattern
        || post.cueInSentence("elsewhere", word)
        || post.cueInClause("might", word)
        || Whereabouts.isAsked(post, word);
  }

  private static boolean isWide(int first, int last, Post post) {
    boolean after =
        last + 1 < post.words().size() && post.words().get(last + 1).stem().equals("wide");
    boolean before = false;
    for (int i = Math.max(0, first - 2); i < first; i++) {
      before |= post.words().get(i).stem().equals("width");
    }
    return after || before && post.sentence()[first] == post.sentence()[Math.max(0, first - 1)];
  }

  /** The piece before it with only words of measuring between, or named after an earlier length. */
  private Mention piece(int first, int last, Post post) {
    boolean measured = false;
    for (int i = first - 1; i >= Math.max(post.sentenceOf(first).first(), first - FARTHEST); i--) {
      int at = i;
      Mention here =
          post.mentions().around(i, i).stream()
              .filter(one -> one.covers(at))
              .filter(one -> one.name().equals(STRAP) || edges.containsKey(one.name()))
              .findFirst()
              .orElse(null);
      if (here != null) {
        return measured || isMeasured(last + 1, post) ? here : null;
      }
      measured |= isMeasured(i, post);
      String word = post.words().get(i).plain();
      boolean number = Character.isDigit(word.charAt(0)) || isUnit(word, post);
      if (!number && !post.lists().has("beside a length", word)) {
        return null;
      }
    }
    return null;
  }

  private static boolean isMeasured(int word, Post post) {
    return word < post.words().size()
        && post.lists().has("measures of a piece", post.words().get(word).plain());
  }

  static boolean isUnit(String word, Post post) {
    return post.lists().has("inches", word)
        || post.lists().has("centimetres", word)
        || post.lists().has("millimetres", word);
  }

  private static Mention before(Mentions phrases, int word, Post post) {
    for (Mention one : phrases.from(word - FARTHEST, word - 1)) {
      boolean beside = post.sentence()[one.first()] == post.sentence()[word];
      for (int i = one.last() + 1; i < word; i++) {
        beside &= post.lists().has("beside a length", post.words().get(i).plain());
      }
      if (beside) {
        return one;
      }
    }
    return null;
  }
}
