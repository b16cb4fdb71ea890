package easewright.intake;

import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.intake.Told.EdgeRead;
import easewright.number.Amount;
import easewright.number.TextSpan;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The edges of one text, and what it says of each and of its elastic. */
final class EdgesSaid {
  private static final double SURE = 0.9;
  private static final int FARTHEST = 9;
  private static final String ELASTIC = "elastic";

  private final Post post;
  private final Mentions kinds;
  private final Mentions putOn;
  private final Map<String, String> edges;
  private final double shortestEdge;
  private final Map<String, Edge> found = new LinkedHashMap<>();

  /**
   * @param kinds kinds of elastic named
   * @param putOn ways of putting it on
   * @param edges pieces to the names of their edges
   * @param shortestEdge what is shorter is a width, in millimetres
   */
  EdgesSaid(
      Post post, Mentions kinds, Mentions putOn, Map<String, String> edges, double shortestEdge) {
    this.post = post;
    this.kinds = kinds;
    this.putOn = putOn;
    this.edges = edges;
    this.shortestEdge = shortestEdge;
  }

  /** What was found of one edge, and where. */
  private static final class Edge {
    private final Map<String, String> said = new TreeMap<>();
    private TextSpan span;

    void add(String field, String value, TextSpan here) {
      said.putIfAbsent(field, value);
      span = span == null ? here : span.with(here);
    }
  }

  /** Adds the length of an edge. */
  void addLength(Amount amount, String unit, Mention piece) {
    edge(piece)
        .add(
            "length",
            amount.text(unit),
            amount.span().with(post.span(piece.first(), piece.last())));
  }

  /** Adds the cut length or the width of an elastic; false where no edge is named for it. */
  boolean addElastic(Amount amount, String unit, int first, int last, boolean wide) {
    Mention piece = edgeOf(first);
    if (piece == null) {
      return false;
    }
    Edge edge = edge(piece);
    TextSpan span = amount.span().with(post.span(piece.first(), piece.last()));
    String field = wide || amount.mm(unit) < shortestEdge ? "width" : "cut";
    edge.add(field, amount.text(unit), span);
    Stretch sentence = post.sentenceOf(first);
    kinds
        .from(sentence.first(), sentence.last())
        .forEach(one -> edge.add("kind", one.name(), span));
    putOn
        .from(sentence.first(), sentence.last())
        .forEach(one -> edge.add("putOn", one.name(), span));
    return true;
  }

  /** "Elastic cut 50", "40 cm of fold-over elastic": the elastic beside it, before or after. */
  boolean isOfElastic(int first, int last) {
    Stretch sentence = post.sentenceOf(first);
    for (int i = first - 1; i >= Math.max(sentence.first(), first - FARTHEST); i--) {
      if (isNamed(ELASTIC, i)) {
        return true;
      }
      String word = post.words().get(i).plain();
      boolean small =
          Character.isDigit(word.charAt(0))
              || PieceLengths.isUnit(word, post)
              || post.lists().has("beside a length", word);
      if (!small) {
        break;
      }
    }
    for (int i = last + 1; i <= Math.min(sentence.last(), last + FARTHEST / 2); i++) {
      if (isNamed(ELASTIC, i)) {
        return true;
      }
      int at = i;
      String word = post.words().get(i).plain();
      boolean small =
          Character.isDigit(word.charAt(0))
              || PieceLengths.isUnit(word, post)
              || word.equals("of")
              || kinds.around(i - 3, i).stream().anyMatch(one -> one.covers(at));
      if (!small) {
        return false;
      }
    }
    return false;
  }

  private boolean isNamed(String part, int word) {
    return post.mentions().named(part).around(word, word).stream()
        .anyMatch(one -> one.covers(word));
  }

  /** The edge named last before the length in its sentence, else the first after it. */
  private Mention edgeOf(int first) {
    Stretch sentence = post.sentenceOf(first);
    Mention best = null;
    for (Mention one : post.mentions().from(sentence.first(), sentence.last())) {
      if (edges.containsKey(one.name()) && (best == null || one.last() < first)) {
        best = one;
      }
    }
    return best;
  }

  /** "The back neckline" is another edge than the neckline. */
  private Edge edge(Mention piece) {
    boolean back =
        piece.first() > 0
            && post.lists().has("behind", post.words().get(piece.first() - 1).plain())
            && piece.name().equals("neckline");
    String name = edges.get(piece.name());
    return found.computeIfAbsent(back ? "back-" + name : name, any -> new Edge());
  }

  /** Each edge with all that was read of it. */
  List<EdgeRead> read() {
    List<EdgeRead> all = new ArrayList<>();
    found.forEach(
        (name, edge) ->
            all.add(
                new EdgeRead(
                    name,
                    edge.said.get("length"),
                    edge.said.get("cut"),
                    edge.said.get("width"),
                    edge.said.get("kind"),
                    edge.said.get("putOn"),
                    edge.span,
                    SURE)));
    return all;
  }
}
