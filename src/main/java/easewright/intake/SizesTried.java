package easewright.intake;

import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.intake.Reading.TextRead;
import easewright.intake.Sizes.Size;
import easewright.intake.Told.SizeRead;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Finds toiles sewn before in other sizes: "my 75C spilled, the 80C gapes at the neck". */
final class SizesTried {
  private static final double SURE = 0.85;

  /** Cues of sizes that were not sewn by the writer, or not yet. */
  private static final String[] ELSEWHERE = {"worn elsewhere", "elsewhere", "by the chart"};

  private final NamedPhrases left;
  private final NamedPhrases present;
  private final NamedPhrases worn;
  private final Set<String> dangers;

  /**
   * Sizes of a text.
   *
   * @param sizes sewn before
   * @param cut the size there is now; null where the text names no other
   * @param taken words that speak of toiles sewn before
   */
  record Found(List<SizeRead> sizes, TextRead cut, BitSet taken) {}

  /** A size and the words that are about it. */
  private record Toile(Size size, int at, Stretch words, boolean left, boolean present) {}

  SizesTried(Lexicon lexicon, Set<String> dangers) {
    this.left = NamedPhrases.of("left for another size", lexicon);
    this.present = NamedPhrases.of("the size there is now", lexicon);
    this.worn = NamedPhrases.of("worn at the moment", lexicon);
    this.dangers = dangers;
  }

  /**
   * @param said signs named anywhere in the text
   */
  Found in(Post post, List<Size> named, SaidWhere said) {
    List<Toile> toiles = toiles(post, named);
    Found found = new Found(new ArrayList<>(), null, new BitSet());
    if (toiles.size() < 2) {
      return found;
    }
    Toile now = now(toiles, post);
    Set<String> seen = signs(now, said, post, false);
    for (Toile one : toiles) {
      if (one == now || one.size().name().equals(now.size().name())) {
        continue;
      }
      Set<String> worse = signs(one, said, post, false);
      Set<String> better = new LinkedHashSet<>(signs(one, said, post, true));
      String outcome = outcome(one, now, post);
      if (worse.isEmpty() && better.isEmpty() && outcome == null && !one.left()) {
        continue;
      }
      better.addAll(seen);
      better.removeAll(worse);
      found.taken().set(one.words().first(), one.words().last() + 1);
      found
          .sizes()
          .add(
              new SizeRead(
                  one.size().name(),
                  outcome,
                  List.copyOf(better),
                  List.copyOf(worse),
                  one.size().span(),
                  SURE));
    }
    TextRead cut = new TextRead(now.size().name(), now.size().span(), SURE);
    return found.sizes().isEmpty() ? found : new Found(found.sizes(), cut, found.taken());
  }

  /** The toiles of the writer, in order; a size said again is the same toile. */
  private List<Toile> toiles(Post post, List<Size> named) {
    List<Size> sizes = new ArrayList<>(post.words().isEmpty() ? List.of() : named);
    sizes.removeIf(Size::letterOnly);
    sizes.sort((one, other) -> one.span().from() - other.span().from());
    Mentions left = this.left.in(post);
    Mentions present = this.present.in(post);
    Mentions worn = this.worn.in(post);
    List<Toile> toiles = new ArrayList<>();
    for (int i = 0; i < sizes.size(); i++) {
      int at = Whereabouts.wordAt(post, sizes.get(i).span().from());
      int last = Whereabouts.wordAt(post, sizes.get(i).span().to() - 1);
      Stretch sentence = post.sentenceOf(at);
      int from = beginning(at, post);
      int to = sentence.last();
      if (i > 0) {
        int before = Whereabouts.wordAt(post, sizes.get(i - 1).span().from());
        from = before >= from ? at : from;
      }
      if (i + 1 < sizes.size()) {
        int next = Whereabouts.wordAt(post, sizes.get(i + 1).span().from());
        int begins = beginning(next, post);
        to = Math.min(to, begins > at ? begins - 1 : next - 1);
      }
      boolean now =
          endsAt(present, at, 1)
              || worn.from(last + 1, last + 2).stream().anyMatch(one -> one.first() <= last + 1);
      Toile toile = new Toile(sizes.get(i), at, new Stretch(from, to), endsAt(left, at, 1), now);
      if (isOwn(toile, post)) {
        toiles.add(toile);
      }
    }
    return toiles;
  }

  /** Where the clause of a size begins; "my", "the" and an adjective before it belong to it. */
  private static int beginning(int at, Post post) {
    return post.clauseOf(at).first();
  }

  private static boolean endsAt(Mentions phrases, int word, int between) {
    return phrases.from(word - 4, word - 1).stream()
        .anyMatch(one -> one.last() < word && word - one.last() - 1 <= between);
  }

  private static boolean isOwn(Toile toile, Post post) {
    Stretch clause = post.clauseOf(toile.at());
    for (int i = clause.first(); i <= clause.last(); i++) {
      if (post.lists().has("not my toile", post.words().get(i).plain())) {
        return false;
      }
    }
    for (String cue : ELSEWHERE) {
      if (post.cueInClause(cue, toile.at())) {
        return false;
      }
    }
    return !post.cueInClause("not yet", toile.at())
        && !post.cueInClause("might", toile.at())
        && !Whereabouts.isAsked(post, toile.at());
  }

  /** The one said to be there now, else the one that is not of the past, else the last. */
  private static Toile now(List<Toile> toiles, Post post) {
    for (Toile one : toiles) {
      if (one.present()) {
        return one;
      }
    }
    List<Toile> rest =
        toiles.stream()
            .filter(
                one ->
                    !one.left() && post.cues("past").from(one.words().first(), one.at()).isEmpty())
            .toList();
    List<Toile> left = rest.isEmpty() ? toiles : rest;
    return left.get(left.size() - 1);
  }

  private Set<String> signs(Toile toile, SaidWhere said, Post post, boolean denied) {
    Set<String> ids = new LinkedHashSet<>();
    for (Match match : said.from(toile.words().first(), toile.words().last())) {
      if (!dangers.contains(match.saying().of()) && Polarity.isDenied(match, post) == denied) {
        ids.add(match.saying().of());
      }
    }
    return ids;
  }

  private static String outcome(Toile earlier, Toile now, Post post) {
    for (String cue : List.of("better", "worse", "same")) {
      if (isSaid(cue, earlier, post)) {
        return cue;
      }
    }
    return isSaid("better", now, post) ? "worse" : isSaid("worse", now, post) ? "better" : null;
  }

  private static boolean isSaid(String cue, Toile toile, Post post) {
    return !post.cues(cue).from(toile.words().first(), toile.words().last()).isEmpty();
  }
}
