package easewright.reply;

import easewright.rulebook.Voice.Talk;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The sentences of a reply in their order, each as needful as it is, cut to a number of words. */
final class Pieces {
  private enum Need {
    /** Whatever the length: the teacher's own lines. */
    OWN,
    ALWAYS,
    /** As long as the reply stays within the most words it may have. */
    WHERE_IT_FITS,
    /** As long as it stays within the words that it usually has. */
    IN_A_SHORT_ONE
  }

  private record Piece(int paragraph, Need need, String text) {
    int words() {
      return text.split("\\s+").length;
    }
  }

  private final List<Piece> pieces = new ArrayList<>();
  private int paragraph;

  /** What follows begins a new paragraph. */
  Pieces paragraph() {
    paragraph++;
    return this;
  }

  /** A sentence that is always said. */
  Pieces always(String text) {
    return add(Need.ALWAYS, text);
  }

  /** A line of the teacher's own, or null; its words count for no limit. */
  Pieces own(String text) {
    return add(Need.OWN, text);
  }

  /** A sentence that is said where the reply is not at its limit. */
  Pieces fits(String text) {
    return add(Need.WHERE_IT_FITS, text);
  }

  /** A sentence that is said only where the reply is short. */
  Pieces spare(String text) {
    return add(Need.IN_A_SHORT_ONE, text);
  }

  private Pieces add(Need need, String text) {
    boolean said = pieces.stream().anyMatch(one -> one.text().equals(text));
    if (text != null && !text.isBlank() && !said) {
      pieces.add(new Piece(paragraph, need, text.strip()));
    }
    return this;
  }

  /** The paragraphs, with no more words than a reply may have. */
  List<String> paragraphs(Talk talk) {
    Set<Piece> kept = new HashSet<>();
    keep(Need.OWN, Integer.MAX_VALUE, 0, kept);
    int words = keep(Need.ALWAYS, Integer.MAX_VALUE, 0, kept);
    words = keep(Need.WHERE_IT_FITS, talk.most(), words, kept);
    keep(Need.IN_A_SHORT_ONE, talk.usual(), words, kept);
    return pieces.stream()
        .filter(kept::contains)
        .collect(
            Collectors.groupingBy(
                Piece::paragraph,
                TreeMap::new,
                Collectors.mapping(Piece::text, Collectors.joining(" "))))
        .values()
        .stream()
        .toList();
  }

  private int keep(Need need, int most, int before, Set<Piece> kept) {
    int words = before;
    for (Piece piece : pieces) {
      if (piece.need() == need && words + piece.words() <= most) {
        words += kept.add(piece) ? piece.words() : 0;
      }
    }
    return words;
  }
}
