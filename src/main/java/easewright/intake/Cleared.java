package easewright.intake;

import easewright.rulebook.EverydayWords;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds complaints a wearer says she does not have, without naming each of them. */
final class Cleared {
  /** "It got stuck at my shoulders. Nothing pinches": no piece was spoken of. */
  private static final Set<String> OF_THE_BODY = Set.of("shoulder", "rib", "skin");

  /** "I can breathe again once it is off", "only in sips": that clears nothing. */
  private static final Set<String> LIMITS =
      Set.of(
          "only", "again", "once", "when", "if", "until", "till", "unless", "without", "after",
          "off", "so", "long", "barely", "hardly", "except");

  private final Map<String, List<String>> fine;
  private final Map<String, List<String>> none;
  private final Lexicon lexicon;
  private final Polarity polarity;

  Cleared(EverydayWords words, Lexicon lexicon, Polarity polarity) {
    this.fine = words.fine();
    this.none = words.none();
    this.lexicon = lexicon;
    this.polarity = polarity;
  }

  /** "Nothing pinches", "no gaping": denied of the piece spoken of, else of the usual one. */
  Map<String, Span> saidNotToBe(Post post) {
    Map<String, Span> denied = new LinkedHashMap<>();
    for (Mention no : post.cues("no")) {
      if (!polarity.isOfThing(no, post) || post.cueInClause("elsewhere", no.first())) {
        continue;
      }
      int sentence = post.sentence()[no.first()];
      for (Mention idea : post.mentions(sentence, sentence)) {
        boolean inOneBreath = idea.last() - idea.first() < idea.words();
        if (none.containsKey(idea.name())
            && inOneBreath
            && polarity.reaches(no, idea.first(), post)
            && namesNoPiece(post.clause()[idea.first()], post)) {
          Span span = post.span(no.first(), idea.last());
          ofPieceSpokenOf(none.get(idea.name()), sentence, post)
              .forEach(id -> denied.putIfAbsent(id, span));
        }
      }
    }
    return denied;
  }

  /** "She can breathe in it", "nothing hurts": said plainly, and neither denied nor asked. */
  Map<String, Span> saidToBeSafe(Post post) {
    Map<String, Span> denied = new LinkedHashMap<>();
    for (Mention cue : post.cues()) {
      if (none.containsKey(cue.name()) && isPlain(cue, post)) {
        Span span = post.span(cue.first(), cue.last());
        none.get(cue.name()).forEach(id -> denied.putIfAbsent(id, span));
      }
    }
    return denied;
  }

  private static boolean isPlain(Mention cue, Post post) {
    int clause = post.clause()[cue.first()];
    int last = Whereabouts.clauseEnd(post, cue.first());
    for (int i = Whereabouts.clauseStart(post, cue.first()); i <= last; i++) {
      if (!cue.covers(i) && LIMITS.contains(post.words().get(i).plain())) {
        return false;
      }
    }
    boolean turned =
        post.cues().stream()
            .filter(
                one -> Set.of("no", "might", "past", "hardly", "elsewhere").contains(one.name()))
            .anyMatch(one -> post.clause()[one.first()] == clause && !cue.covers(one.first()));
    return !turned && !Whereabouts.isAsked(post, cue.first());
  }

  private boolean namesNoPiece(int clause, Post post) {
    return post.mentionsInClause(clause).stream()
        .noneMatch(one -> lexicon.isPart(one.name()) || lexicon.isPlace(one.name()));
  }

  private List<String> ofPieceSpokenOf(List<String> ids, int sentence, Post post) {
    for (int spoken = sentence; spoken >= sentence - 1; spoken--) {
      List<Mention> pieces =
          post.mentions(spoken, spoken).stream()
              .filter(one -> !OF_THE_BODY.contains(one.name()))
              .toList();
      List<String> own =
          ids.stream()
              .filter(
                  id ->
                      pieces.stream()
                          .anyMatch(one -> fine.getOrDefault(one.name(), List.of()).contains(id)))
              .toList();
      if (!own.isEmpty()) {
        return own;
      }
    }
    return ids.subList(0, 1);
  }

  /** "Straps and cups are fine": what a wearer would complain of there is denied. */
  Map<String, Span> saidToBeFine(Post post, List<Match> said) {
    Map<String, Span> denied = new LinkedHashMap<>();
    for (Mention cue : post.cues("fine")) {
      boolean no =
          post.cues("no").stream()
                  .anyMatch(
                      one ->
                          one.last() < cue.first()
                              && cue.first() - one.last() <= 3
                              && post.clause()[one.first()] == post.clause()[cue.first()])
              || post.cues("not a no").stream().anyMatch(one -> one.covers(cue.first()))
              || post.cues("might").stream()
                  .anyMatch(
                      one ->
                          one.last() < cue.first()
                              && post.clause()[one.first()] == post.clause()[cue.first()]);
      if (no || post.cueInClause("elsewhere", cue.first())) {
        continue;
      }
      for (Mention part : fineParts(cue, post, said)) {
        Span span =
            post.span(Math.min(part.first(), cue.first()), Math.max(part.last(), cue.last()));
        fine.getOrDefault(part.name(), List.of()).forEach(id -> denied.putIfAbsent(id, span));
      }
    }
    return denied;
  }

  private List<Mention> fineParts(Mention cue, Post post, List<Match> said) {
    return post.mentions().stream()
        .filter(one -> fine.containsKey(one.name()))
        .filter(one -> post.sentence()[one.first()] == post.sentence()[cue.first()])
        .filter(one -> isSubject(one, cue, post))
        .filter(one -> said.stream().noneMatch(match -> hasTaken(match, one, cue, post)))
        .toList();
  }

  /** "It rides up at the back, the straps are fine": the back is told of, and not as fine. */
  private static boolean hasTaken(Match match, Mention part, Mention cue, Post post) {
    return match.said().contains(part)
        && (post.clause()[match.head()] == post.clause()[cue.first()]
            || part.last() < cue.first()
                && post.strongest(part.last(), cue.first()) != Post.Break.NONE);
  }

  private boolean isSubject(Mention part, Mention cue, Post post) {
    if (part.last() < cue.first()) {
      Post.Break strongest = post.strongest(part.last(), cue.first());
      boolean list =
          strongest == Post.Break.NONE
              || strongest.compareTo(Post.Break.PAUSE) <= 0
                  && onlyParts(part.last() + 1, cue.first(), post);
      return list && cue.first() - part.last() <= 6;
    }
    return part.first() > cue.last()
        && part.first() - cue.last() <= 4
        && post.words().get(cue.first()).plain().matches("no|happy|love|fine|good")
        && post.strongest(cue.last(), part.first()) == Post.Break.NONE
        && post.cues("fine").stream()
            .noneMatch(other -> other.first() > part.last() && other.first() - part.last() <= 3);
  }

  private boolean onlyParts(int from, int to, Post post) {
    for (int i = from; i < to; i++) {
      int at = i;
      boolean named = post.mentions().stream().anyMatch(one -> one.covers(at));
      if (!named && !lexicon.isDropped(post.words().get(i))) {
        return false;
      }
    }
    return true;
  }
}
