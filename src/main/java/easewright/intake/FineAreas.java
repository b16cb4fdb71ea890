package easewright.intake;

import easewright.english.Mention;
import easewright.english.WordGaps;
import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TextRead;
import easewright.number.TextSpan;
import easewright.rulebook.Catalog.SignEntry;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds areas in which all is well: "the cups are fine", "the rest fits". */
final class FineAreas {
  private static final double SURE = 0.8;
  private static final int FARTHEST = 4;

  private final Map<String, SignEntry> catalog;
  private final Map<String, String> ofPieces;
  private final Map<String, String> ofPlaces;
  private final List<String[]> rest;
  private final DeniedComplaints complaints;

  FineAreas(Map<String, SignEntry> catalog, Lexicon lexicon, DeniedComplaints complaints) {
    this.catalog = catalog;
    this.complaints = complaints;
    this.ofPieces = lexicon.lists().pairs("areas of pieces");
    this.ofPlaces = lexicon.lists().pairs("areas of places");
    this.rest =
        lexicon.lists().words("the rest of it").stream().map(one -> one.split(" ")).toList();
  }

  /**
   * @param said what was found of signs
   * @param read the signs as they were read
   */
  List<TextRead> in(Post post, List<Match> said, List<SignRead> read) {
    Map<String, TextSpan> areas = new LinkedHashMap<>();
    complaints
        .finePieces(post, said)
        .forEach(
            (piece, span) -> {
              if (ofPieces.containsKey(piece)) {
                areas.putIfAbsent(ofPieces.get(piece), span);
              }
            });
    for (Mention cue : post.cues("fine")) {
      TextSpan span = rest(cue, post);
      if (span != null) {
        Set<String> told = told(read, span);
        ofPieces.values().stream()
            .filter(area -> !told.contains(area))
            .forEach(area -> areas.putIfAbsent(area, span));
      }
    }
    List<TextRead> found = new ArrayList<>();
    areas.forEach((area, span) -> found.add(new TextRead(area, span, SURE)));
    return found;
  }

  /** "The rest" shortly before the word, in its clause and not denied; else null. */
  private TextSpan rest(Mention cue, Post post) {
    // "The rest fits fine": a clause may begin anew at the verb, so the sentence bounds it.
    int from = WordGaps.firstOf(post.sentence()[cue.first()], post.sentence());
    boolean no =
        post.cues("no").from(from, cue.first() - 1).stream()
                .anyMatch(one -> one.last() < cue.first())
            || Whereabouts.isAsked(post, cue.first());
    for (int i = Math.max(from, cue.first() - FARTHEST - 2); !no && i < cue.first(); i++) {
      for (String[] words : rest) {
        int last = i + words.length - 1;
        if (last < cue.first()
            && cue.first() - last <= FARTHEST
            && TimeWords.stands(words, i, post)) {
          return post.span(i, cue.last());
        }
      }
    }
    return null;
  }

  /** Areas of which a sign is told in other words; one all over is told of each. */
  private Set<String> told(List<SignRead> read, TextSpan fine) {
    Set<String> told = new HashSet<>();
    for (SignRead one : read) {
      if (one.present() && !one.span().touches(fine)) {
        for (String place : catalog.get(one.id()).where()) {
          if (ofPlaces.containsKey(place)) {
            told.add(ofPlaces.get(place));
          } else {
            told.addAll(ofPieces.values());
          }
        }
      }
    }
    return told;
  }
}
