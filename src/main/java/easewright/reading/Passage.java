package easewright.reading;

import java.util.ArrayList;
import java.util.List;

/**
 * As much of a text as the model is given at once.
 *
 * @param ids word pieces: the start, then sentences, each followed by an end
 * @param sentences which sentences are asked about, with their places among the pieces
 */
record Passage(List<Integer> ids, List<Asked> sentences) {
  /**
   * A sentence asked about.
   *
   * @param at where it stands in the text
   * @param from index of its first piece
   * @param to index after its last piece
   */
  record Asked(SentenceSpan at, int from, int to) {}

  private record Pieces(SentenceSpan at, List<Integer> ids) {}

  /**
   * A text as passages. Most posts are one; the sentences of a longer one are each asked about
   * once, and the passages after the first begin with the end of the sentence before.
   */
  static List<Passage> of(String text, WordPieces pieces, ReaderSettings.Limits limits) {
    List<Pieces> parts = new ArrayList<>();
    Sentences.in(text)
        .forEach(one -> addParts(text, one, pieces, limits.piecesOfSentence(), parts));
    List<Passage> found = new ArrayList<>();
    Passage open = begun(pieces);
    List<Integer> before = List.of();
    for (Pieces part : parts) {
      boolean full =
          open.ids.size() + part.ids.size() + 1 > limits.pieces()
              || open.sentences.size() == limits.sentences();
      if (full) {
        found.add(open);
        open = begun(pieces);
        open.add(
            before.subList(Math.max(0, before.size() - limits.piecesOfContext()), before.size()));
        open.ids.add(pieces.end());
      }
      int from = open.ids.size();
      open.add(part.ids);
      open.sentences.add(new Asked(part.at, from, open.ids.size()));
      open.ids.add(pieces.end());
      before = part.ids;
    }
    if (!open.sentences.isEmpty()) {
      found.add(open);
    }
    return found;
  }

  private static Passage begun(WordPieces pieces) {
    Passage passage = new Passage(new ArrayList<>(), new ArrayList<>());
    passage.ids.add(pieces.start());
    return passage;
  }

  private void add(List<Integer> more) {
    ids.addAll(more);
  }

  /** A sentence too long is halved at a space, so that nothing is left unread. */
  private static void addParts(
      String text, SentenceSpan at, WordPieces pieces, int most, List<Pieces> parts) {
    List<Integer> ids = pieces.of(text.substring(at.from(), at.to()));
    if (ids.isEmpty()) {
      return;
    }
    if (ids.size() <= most || at.to() - at.from() < 2) {
      parts.add(new Pieces(at, ids.subList(0, Math.min(most, ids.size()))));
      return;
    }
    int middle = middle(text, at);
    addParts(text, Sentences.stripped(text, at.from(), middle), pieces, most, parts);
    addParts(text, Sentences.stripped(text, middle, at.to()), pieces, most, parts);
  }

  /** The space nearest the middle, else the middle itself. */
  private static int middle(String text, SentenceSpan at) {
    int half = (at.from() + at.to()) / 2;
    for (int off = 0; half - off > at.from() && half + off < at.to(); off++) {
      if (Sentences.isSpace(text.charAt(half - off))) {
        return half - off;
      }
      if (Sentences.isSpace(text.charAt(half + off))) {
        return half + off;
      }
    }
    return text.offsetByCodePoints(at.from(), Math.max(1, text.codePointCount(at.from(), half)));
  }
}
