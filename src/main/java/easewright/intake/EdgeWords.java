package easewright.intake;

import easewright.rulebook.RuleBookSource;
import java.util.Map;

/** The words for edges of the toile and for their elastics. */
final class EdgeWords {
  private final NamedPhrases kinds;
  private final NamedPhrases putOn;
  private final Map<String, String> edges;
  private final double shortestEdge;

  EdgeWords(RuleBookSource book, Lexicon lexicon) {
    this.kinds = NamedPhrases.ofPairs("kinds of elastic", lexicon);
    this.putOn = NamedPhrases.ofPairs("ways of putting on elastic", lexicon);
    this.edges = lexicon.lists().pairs("edges of pieces");
    this.shortestEdge = book.parameter("shortest-edge");
  }

  /** The edges of a text, with nothing read of them yet. */
  EdgesSaid of(Post post) {
    return new EdgesSaid(post, kinds.in(post), putOn.in(post), edges, shortestEdge);
  }
}
