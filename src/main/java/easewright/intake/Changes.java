package easewright.intake;

import easewright.intake.Reading.ChangeRead;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/** Finds changes that were made, and what they did. */
final class Changes {
  private static final Set<String> DONE =
      Set.of(
          "took", "taken", "cut", "let", "made", "went", "put", "sewn", "brought", "gave", "tried",
          "did", "done", "has", "have", "had", "i've", "ive", "already", "after", "with", "since");
  private static final Set<String> TO_DO =
      Set.of(
          "should", "will", "would", "could", "can", "shall", "i'll", "gonna", "might", "try",
          "need", "needs", "want", "do", "if");
  private static final int FARTHEST_AMOUNT = 6;

  private final Sayings sayings;

  Changes(EverydayWords words, Lexicon lexicon) {
    this.sayings = new Sayings(words.changes(), lexicon);
  }

  List<ChangeRead> in(Post post, List<Amount> amounts) {
    List<ChangeRead> found = new ArrayList<>();
    for (Match match : sayings.in(post)) {
      String id = match.saying().of();
      if (isDone(match, post) && found.stream().noneMatch(one -> one.adjustment().equals(id))) {
        found.add(
            new ChangeRead(
                id,
                amount(match, post, amounts),
                outcome(match, post),
                post.span(match.first(), match.last()),
                match.confidence()));
      }
    }
    return found;
  }

  /** Told in the past tense, and neither asked about nor put off. */
  private static boolean isDone(Match match, Post post) {
    int from = clauseStart(match.first(), post);
    boolean done = false;
    for (int i = from; i <= match.last(); i++) {
      String word = post.words().get(i).plain();
      boolean past = word.endsWith("ed") && word.length() > 3 || DONE.contains(word);
      if (TO_DO.contains(word) && i < match.last()) {
        return false;
      }
      done |= past;
    }
    return done && !post.cueInClause("no", match.head());
  }

  private static int clauseStart(int word, Post post) {
    int from = word;
    while (from > 0 && word - from < 5 && post.breaks().get(from).compareTo(Post.Break.JOIN) < 0) {
      from--;
    }
    return from;
  }

  private static String amount(Match match, Post post, List<Amount> amounts) {
    Span span = post.span(match.first(), match.last());
    return amounts.stream()
        .filter(Amount::isLength)
        .filter(one -> one.quantity("mm").map(q -> q.length().mm() <= 150).orElse(false))
        .filter(one -> words(post, one.span(), span) <= FARTHEST_AMOUNT)
        .filter(one -> Lengths.sentenceOf(one, post) == post.sentence()[match.first()])
        .min(Comparator.comparingLong(one -> words(post, one.span(), span)))
        .map(one -> one.text("mm"))
        .orElse(null);
  }

  private static long words(Post post, Span one, Span other) {
    int from = Math.min(one.to(), other.to());
    int to = Math.max(one.from(), other.from());
    return post.words().stream().filter(word -> word.from() >= from && word.to() <= to).count();
  }

  /** The nearest word on the outcome after the change, in its sentence or the next. */
  private static String outcome(Match match, Post post) {
    int sentence = post.sentence()[match.last()];
    return post.cues().stream()
        .filter(cue -> List.of("better", "worse", "same").contains(cue.name()))
        .filter(cue -> cue.first() > match.last())
        .filter(cue -> post.sentence()[cue.first()] - sentence <= 1)
        .filter(cue -> cue.first() - match.last() <= 14)
        .min(
            Comparator.comparingInt(Mention::first)
                .thenComparing(Comparator.comparingInt(Mention::words).reversed()))
        .map(Mention::name)
        .orElse(null);
  }
}
