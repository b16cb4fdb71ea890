package easewright.intake;

import easewright.english.Break;
import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.TextRead;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Finds how the tape was held and who held it: "94 cm over a padded bra". */
final class TapeFinder {
  private static final double SURE = 0.85;

  private final NamedPhrases ways;
  private final NamedPhrases methods;

  /** For each word of a way, the measurements that it may be said of. */
  private final Map<String, List<String>> girths = new LinkedHashMap<>();

  TapeFinder(RuleBookSource book, Lexicon lexicon) {
    this.ways = NamedPhrases.ofPairs("ways of holding a tape", lexicon);
    this.methods = NamedPhrases.ofPairs("ways of measuring", lexicon);
    List<String> all = List.of("bust", "underbust", "upperChest");
    book.measures()
        .held()
        .forEach(
            way ->
                girths.put(
                    way.field() + " " + way.id(),
                    way.field().equals("over") ? all.subList(0, 1) : all));
  }

  /** Who or what measured; null when not said. */
  TextRead method(Post post) {
    for (Mention one : methods.in(post)) {
      if (!Whereabouts.isAsked(post, one.first())
          && post.denials().reaching(one.first()).isEmpty()) {
        return new TextRead(one.name(), post.span(one.first(), one.last()), SURE);
      }
    }
    return null;
  }

  /** The same lengths, each with how the tape was held for it. */
  List<LengthRead> held(Post post, List<LengthRead> lengths) {
    Mentions said = ways.in(post);
    if (said.isEmpty() || lengths.isEmpty()) {
      return lengths;
    }
    List<LengthRead> held = new ArrayList<>(lengths);
    for (Mention way : said) {
      if (!Whereabouts.isAsked(post, way.first()) && girths.containsKey(way.name())) {
        of(way, lengths, post).forEach(i -> held.set(i, with(way, held.get(i))));
      }
    }
    return held;
  }

  private static LengthRead with(Mention way, LengthRead one) {
    int gap = way.name().indexOf(' ');
    Map<String, String> all = new LinkedHashMap<>(one.held());
    all.putIfAbsent(way.name().substring(0, gap), way.name().substring(gap + 1));
    return new LengthRead(
        one.of(), one.name(), one.text(), all, one.unitAssumed(), one.span(), one.confidence());
  }

  /**
   * The body's lengths that it is said of: those of its breath, else those of its sentence, else
   * all where the sentence tells of measuring.
   */
  private List<Integer> of(Mention way, List<LengthRead> lengths, Post post) {
    List<Integer> all = new ArrayList<>();
    List<Integer> sentence = new ArrayList<>();
    List<Integer> breath = new ArrayList<>();
    for (int i = 0; i < lengths.size(); i++) {
      LengthRead one = lengths.get(i);
      if (!one.of().equals("body") || !girths.get(way.name()).contains(one.name())) {
        continue;
      }
      all.add(i);
      int at = Whereabouts.wordAt(post, one.span().from());
      int last = Whereabouts.wordAt(post, one.span().to() - 1);
      if (post.sentence()[at] == post.sentence()[way.first()]) {
        sentence.add(i);
        Break between =
            at < way.first() ? post.strongest(last, way.first()) : post.strongest(way.last(), at);
        if (between.compareTo(Break.PAUSE) < 0) {
          breath.add(i);
        }
      }
    }
    return !breath.isEmpty()
        ? breath
        : !sentence.isEmpty() ? sentence : tellsOfIt(way, post) ? all : List.of();
  }

  private static boolean tellsOfIt(Mention way, Post post) {
    Stretch sentence = post.sentenceOf(way.first());
    for (int i = sentence.first(); i <= sentence.last(); i++) {
      if (post.words().get(i).stem().equals("measur")) {
        return true;
      }
    }
    return false;
  }
}
