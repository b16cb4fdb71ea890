package easewright.intake;

import easewright.english.Break;
import easewright.english.Denials;
import easewright.english.Mention;
import easewright.english.Stretch;
import easewright.english.WordGaps;
import easewright.number.TextSpan;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds complaints a wearer says she does not have, without naming each of them. */
final class DeniedComplaints {
  /** "It got stuck at my shoulders. Nothing pinches": no piece was spoken of. */
  private static final Set<String> OF_THE_BODY = Set.of("shoulder", "rib", "skin");

  private static final Set<String> TURNING = Set.of("no", "might", "past", "hardly", "elsewhere");
  private static final int REACH_OF_NO = 3;
  private static final int FARTHEST_SUBJECT = 6;
  private static final int FARTHEST_OBJECT = 4;

  private final Map<String, List<String>> fine;
  private final Map<String, List<String>> none;
  private final Lexicon lexicon;

  DeniedComplaints(EverydayWords words, Lexicon lexicon) {
    this.fine = words.fine();
    this.none = words.none();
    this.lexicon = lexicon;
  }

  /** "Nothing pinches", "no gaping": denied of the piece spoken of, else of the usual one. */
  Map<String, TextSpan> saidNotToBe(Post post) {
    Map<String, TextSpan> denied = new LinkedHashMap<>();
    for (Mention no : post.cues("no")) {
      if (!post.denials().isOfThing(no) || post.cueInClause("elsewhere", no.first())) {
        continue;
      }
      int sentence = post.sentence()[no.first()];
      int last = post.layout().lastWithin(Denials.REACH, no.last());
      for (Mention idea : post.mentions().from(no.last() + 1, last)) {
        boolean inOneBreath = idea.last() - idea.first() < idea.words();
        if (none.containsKey(idea.name())
            && inOneBreath
            && Polarity.reaches(no, idea.first(), post)
            && namesNoPiece(post.clause()[idea.first()], post)) {
          TextSpan span = post.span(no.first(), idea.last());
          ofPieceSpokenOf(none.get(idea.name()), sentence, post)
              .forEach(id -> denied.putIfAbsent(id, span));
        }
      }
    }
    return denied;
  }

  /** "She can breathe in it", "nothing hurts": said plainly, and neither denied nor asked. */
  Map<String, TextSpan> saidToBeSafe(Post post) {
    Map<String, TextSpan> denied = new LinkedHashMap<>();
    for (Mention cue : post.cues()) {
      if (none.containsKey(cue.name()) && isPlain(cue, post)) {
        TextSpan span = post.span(cue.first(), cue.last());
        none.get(cue.name()).forEach(id -> denied.putIfAbsent(id, span));
      }
    }
    return denied;
  }

  private static boolean isPlain(Mention cue, Post post) {
    Stretch clause = post.clauseOf(cue.first());
    for (int i = clause.first(); i <= clause.last(); i++) {
      if (!cue.covers(i) && post.lists().has("limits", post.words().get(i).plain())) {
        return false;
      }
    }
    boolean turned =
        post.cuesInClause(cue.first()).stream()
            .filter(one -> TURNING.contains(one.name()))
            .anyMatch(one -> !cue.covers(one.first()));
    return !turned && !Whereabouts.isAsked(post, cue.first());
  }

  private boolean namesNoPiece(int clause, Post post) {
    return post.mentionsInClause(clause).stream()
        .noneMatch(one -> lexicon.isPart(one.name()) || lexicon.isPlace(one.name()));
  }

  private List<String> ofPieceSpokenOf(List<String> ids, int sentence, Post post) {
    for (int spoken = sentence; spoken >= sentence - 1; spoken--) {
      int from = WordGaps.firstOf(spoken, post.sentence());
      int to = WordGaps.firstOf(spoken + 1, post.sentence()) - 1;
      List<String> own = ids.stream().filter(id -> isOfAPieceIn(from, to, id, post)).toList();
      if (!own.isEmpty()) {
        return own;
      }
    }
    return ids.subList(0, 1);
  }

  private boolean isOfAPieceIn(int from, int to, String id, Post post) {
    return fine.entrySet().stream()
        .filter(piece -> piece.getValue().contains(id) && !OF_THE_BODY.contains(piece.getKey()))
        .anyMatch(piece -> !post.mentions().named(piece.getKey()).from(from, to).isEmpty());
  }

  /** "Straps and cups are fine": what a wearer would complain of there is denied. */
  Map<String, TextSpan> saidToBeFine(Post post, List<Match> said) {
    Map<String, TextSpan> denied = new LinkedHashMap<>();
    finePieces(post, said)
        .forEach(
            (piece, span) ->
                fine.getOrDefault(piece, List.of()).forEach(id -> denied.putIfAbsent(id, span)));
    return denied;
  }

  /** The pieces said to be fine, and where. */
  Map<String, TextSpan> finePieces(Post post, List<Match> said) {
    Map<String, TextSpan> pieces = new LinkedHashMap<>();
    Map<Mention, List<Match>> tellingOf = new HashMap<>();
    for (Match match : said) {
      match
          .said()
          .forEach(one -> tellingOf.computeIfAbsent(one, any -> new ArrayList<>()).add(match));
    }
    for (Mention cue : post.cues("fine")) {
      boolean no =
          post.cues("no").around(cue.first() - REACH_OF_NO, cue.first()).stream()
                  .anyMatch(
                      one ->
                          one.last() < cue.first()
                              && cue.first() - one.last() <= REACH_OF_NO
                              && post.clause()[one.first()] == post.clause()[cue.first()])
              || post.cues("not a no").around(cue.first(), cue.first()).stream()
                  .anyMatch(one -> one.covers(cue.first()))
              || post.cues("might").from(post.clauseOf(cue.first()).first(), cue.first()).stream()
                  .anyMatch(one -> one.last() < cue.first());
      if (no
          || post.cueInClause("elsewhere", cue.first())
          || Whereabouts.isAsked(post, cue.first())) {
        continue;
      }
      for (Mention part : fineParts(cue, post, tellingOf)) {
        TextSpan span =
            post.span(Math.min(part.first(), cue.first()), Math.max(part.last(), cue.last()));
        pieces.putIfAbsent(part.name(), span);
      }
    }
    return pieces;
  }

  private List<Mention> fineParts(Mention cue, Post post, Map<Mention, List<Match>> tellingOf) {
    return post
        .mentions()
        .around(cue.first() - FARTHEST_SUBJECT, cue.last() + FARTHEST_OBJECT)
        .stream()
        .filter(one -> fine.containsKey(one.name()))
        .filter(one -> post.sentence()[one.first()] == post.sentence()[cue.first()])
        .filter(one -> isSubject(one, cue, post))
        .filter(
            one ->
                tellingOf.getOrDefault(one, List.of()).stream()
                    .noneMatch(match -> hasTaken(match, one, cue, post)))
        .toList();
  }

  /** "It rides up at the back, the straps are fine": the back is told of, and not as fine. */
  private static boolean hasTaken(Match match, Mention part, Mention cue, Post post) {
    return post.clause()[match.head()] == post.clause()[cue.first()]
        || part.last() < cue.first() && post.strongest(part.last(), cue.first()) != Break.NONE;
  }

  private boolean isSubject(Mention part, Mention cue, Post post) {
    if (part.last() < cue.first()) {
      Break strongest = post.strongest(part.last(), cue.first());
      boolean list =
          strongest == Break.NONE
              || strongest.compareTo(Break.PAUSE) <= 0
                  && onlyParts(part.last() + 1, cue.first(), post);
      return list && cue.first() - part.last() <= FARTHEST_SUBJECT;
    }
    return part.first() > cue.last()
        && part.first() - cue.last() <= FARTHEST_OBJECT
        && post.lists().has("said of what is fine", post.words().get(cue.first()).plain())
        && post.strongest(cue.last(), part.first()) == Break.NONE
        && post.cues("fine").from(part.last() + 1, part.last() + REACH_OF_NO).isEmpty();
  }

  private boolean onlyParts(int from, int to, Post post) {
    for (int i = from; i < to; i++) {
      int at = i;
      boolean named = post.mentions().around(at, at).stream().anyMatch(one -> one.covers(at));
      if (!named && !lexicon.isDropped(post.words().get(i))) {
        return false;
      }
    }
    return true;
  }
}
