package easewright.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * As much of a text as the model is given at once.
 *
 * @param ids word pieces: the start, then sentences, each followed by an end
 * @param sentences which sentences are asked about, with their places among the pieces
 * @param numbers which numbers of these sentences are asked about
 */
record Passage(List<Integer> ids, List<Asked> sentences, List<Asked> numbers) {
  /**
   * A sentence or a number asked about.
   *
   * @param at where it stands in the text
   * @param from index of its first piece
   * @param to index after its last piece
   */
  record Asked(TextPlace at, int from, int to) {}

  private record Pieces(TextPlace at, List<Integer> ids) {}

  /**
   * A text as passages. Most posts are one; the sentences of a longer one are each asked about
   * once, and the passages after the first begin with the end of the sentence before.
   *
   * @param numbers asked about as well, as many of a passage as it may hold sentences
   */
  static List<Passage> of(
      String text, List<TextPlace> numbers, WordPieces pieces, ReaderSettings.Limits limits) {
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
      Asked sentence = new Asked(part.at, from, open.ids.size());
      open.sentences.add(sentence);
      numbers.stream()
          .filter(part.at::covers)
          .flatMap(one -> number(text, one, sentence, pieces).stream())
          .limit(limits.sentences() - open.numbers.size())
          .forEach(open.numbers::add);
      open.ids.add(pieces.end());
      before = part.ids;
    }
    if (!open.sentences.isEmpty()) {
      found.add(open);
    }
    return found;
  }

  /** A number by its pieces; nothing where its sentence is cut off before it. */
  private static Optional<Asked> number(
      String text, TextPlace at, Asked sentence, WordPieces pieces) {
    int start = sentence.at.from();
    int from = sentence.from + pieces.of(text.substring(start, at.from())).size();
    int to = sentence.from + pieces.of(text.substring(start, at.to())).size();
    return from < to && to <= sentence.to ? Optional.of(new Asked(at, from, to)) : Optional.empty();
  }

  private static Passage begun(WordPieces pieces) {
    Passage passage = new Passage(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    passage.ids.add(pieces.start());
    return passage;
  }

  private void add(List<Integer> more) {
    ids.addAll(more);
  }

  /** A sentence too long is halved at a space, so that nothing is left unread. */
  private static void addParts(
      String text, TextPlace at, WordPieces pieces, int most, List<Pieces> parts) {
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
  private static int middle(String text, TextPlace at) {
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
