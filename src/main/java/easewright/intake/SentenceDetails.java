package easewright.intake;

import easewright.english.Mention;
import easewright.english.Stretch;
import easewright.intake.Reading.SignRead;
import easewright.number.Amount;
import easewright.number.TextSpan;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Gives side and amount to signs that a trained model read. The model names a sentence and no
 * words, so the words of the sign's own phrases stand for it, and the whole sentence where there
 * are none. Place and degree are left out, since the sentence may name those of another sign.
 */
final class SentenceDetails {
  /** Stands for a sign whose phrases share no word with its sentence. */
  private static final String SENTENCE = "";

  private final Signs signs;
  private final Opposites opposites;
  private final Map<String, Set<String>> elements = new HashMap<>();

  /**
   * @param sayings by which the book knows signs
   * @param opposites signs that one sentence can't report both
   */
  SentenceDetails(List<Saying> sayings, Signs signs, Opposites opposites) {
    this.signs = signs;
    this.opposites = opposites;
    sayings.forEach(
        one -> elements.computeIfAbsent(one.of(), any -> new HashSet<>()).addAll(one.elements()));
  }

  /**
   * The same reading, where signs that only the model read have what their sentences tell of them.
   *
   * @param amounts lengths that nothing else has taken
   * @param said signs that the words found
   */
  Joined in(Joined read, Post post, List<Amount> amounts, List<Match> said) {
    Joined joined = opposites.settled(read);
    List<SignRead> added = joined.added();
    if (post.words().isEmpty() || added.isEmpty()) {
      return joined;
    }
    List<Match> own = added.stream().map(one -> match(one, post)).toList();
    List<Match> claiming = new ArrayList<>(said);
    for (int i = 0; i < own.size(); i++) {
      if (added.get(i).present() && isNamed(own.get(i))) {
        claiming.add(own.get(i));
      }
    }
    List<SignRead> detailed = new ArrayList<>();
    for (int i = 0; i < own.size(); i++) {
      boolean free = isNamed(own.get(i)) || isAlone(added.get(i), joined.signs());
      detailed.add(
          signs.withDetails(added.get(i), own.get(i), post, free ? amounts : List.of(), claiming));
    }
    return joined.withDetails(ofOneSignEach(detailed, joined, post));
  }

  private static boolean isNamed(Match match) {
    return !match.said().get(0).name().equals(SENTENCE);
  }

  /** Whether no other sign that has an amount may claim the lengths of its sentence. */
  private boolean isAlone(SignRead read, List<SignRead> all) {
    return all.stream()
        .filter(SignRead::present)
        .filter(one -> !one.id().equals(read.id()) && signs.hasAmount(one.id()))
        .noneMatch(one -> one.span().touches(read.span()));
  }

  /**
   * A length that two signs of one sentence would claim is neither's, but what the sides differ by.
   */
  private static List<SignRead> ofOneSignEach(List<SignRead> detailed, Joined joined, Post post) {
    List<SignRead> all = new ArrayList<>(detailed);
    joined.signs().stream().filter(one -> one.amount() != null).forEach(all::add);
    return detailed.stream()
        .map(
            one ->
                all.stream().anyMatch(other -> isSameLength(one, other, post))
                    ? one.withoutAmount()
                    : one)
        .toList();
  }

  private static boolean isSameLength(SignRead one, SignRead other, Post post) {
    boolean compared =
        post.lists().has("differences of left and right", one.id())
            && post.lists().has("differences of left and right", other.id());
    return !one.id().equals(other.id())
        && !compared
        && one.amount() != null
        && one.amount().equals(other.amount())
        && one.span().touches(other.span());
  }

  /** Stands where the clause names most of what the book's phrases for the sign name. */
  private Match match(SignRead read, Post post) {
    Saying saying = new Saying(read.id(), read.because(), List.of(), false);
    List<Mention> named = named(read, post);
    return new Match(saying, named, List.of(), 0, read.confidence());
  }

  private List<Mention> named(SignRead read, Post post) {
    Stretch sentence = words(read.span(), post);
    Set<String> wanted = elements.getOrDefault(read.id(), Set.of());
    Map<Integer, List<Mention>> byClause = new HashMap<>();
    for (Mention one : post.mentions().from(sentence.first(), sentence.last())) {
      if (wanted.contains(one.name())) {
        byClause.computeIfAbsent(post.clause()[one.first()], any -> new ArrayList<>()).add(one);
      }
    }
    return byClause.entrySet().stream()
        .max(
            Comparator.<Map.Entry<Integer, List<Mention>>>comparingLong(
                    one -> one.getValue().stream().map(Mention::name).distinct().count())
                .thenComparing(one -> -one.getKey()))
        .map(Map.Entry::getValue)
        .orElse(List.of(new Mention(SENTENCE, sentence.first(), sentence.last(), 1)));
  }

  private static Stretch words(TextSpan span, Post post) {
    int first = Whereabouts.wordAt(post, span.from());
    if (post.words().get(first).from() < span.from() && first + 1 < post.words().size()) {
      first++;
    }
    return new Stretch(first, Math.max(first, Whereabouts.wordAt(post, span.to() - 1)));
  }
}
