package easewright.rulebook.check;

import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Words that a rule book may use without defining them, because the code or a pattern sheet does.
 *
 * @param circumstances what requests can say about the wearing, such as "nursing"
 * @param figures ids of derived numbers, such as "band-length-excess"
 * @param measurements wire names of the measurements a text may hold
 * @param edges edges of the toile that requests can name
 * @param choices choice to its options, of the shipped pattern sheets
 * @param parameters ids of the parameters the code itself needs
 * @param sentences keys of the sentences of {@code wording.yaml} the code says
 * @param cues names of the cues the reader of posts acts on
 * @param readerLists names of the lists of small words that the reader of posts depends on
 * @param phrases keys of the phrases that replies say
 */
public record KnownWords(
    Set<String> circumstances,
    Set<String> figures,
    Set<String> measurements,
    Set<String> edges,
    Map<String, List<String>> choices,
    Set<String> parameters,
    Set<String> sentences,
    Set<String> cues,
    Set<String> readerLists,
    Set<String> phrases) {

  /** The outcomes of a change tried earlier. */
  public static final List<String> OUTCOMES = List.of("better", "same", "worse");

  /** When a sign shows. */
  public static final List<String> TIMES =
      List.of(
          "first-minutes",
          "after-an-hour",
          "by-evening",
          "after-a-wash",
          "before-a-feed",
          "after-a-feed",
          "on-some-days-of-the-month",
          "since-the-last-fitting",
          "always");

  /**
   * What the code needs of any book, derived from the compiled-in book: every parameter that none
   * of its rules or adjustments names, every sentence, every cue.
   *
   * @param shared parameters that both rules and the code name
   */
  public static KnownWords of(
      RuleBookSource compiledIn,
      Set<String> circumstances,
      Set<String> figures,
      Set<String> edges,
      Map<String, List<String>> choices,
      Set<String> shared) {
    Set<String> own = new java.util.TreeSet<>(compiledIn.parameters().keySet());
    compiledIn.rules().forEach(r -> r.comparisons().forEach(c -> own.remove(c.parameter())));
    compiledIn.catalog().adjustments().values().stream()
        .filter(one -> one.limit() != null)
        .forEach(one -> own.remove(one.limit()));
    own.addAll(shared);
    return new KnownWords(
        circumstances,
        figures,
        compiledIn.everyday().measurements().keySet(),
        edges,
        choices,
        own,
        compiledIn.wording().sentences().keySet(),
        compiledIn.everyday().cues().keySet(),
        compiledIn.everyday().reader().keySet(),
        compiledIn.wording().voices().get(Voice.USUAL).phrases().keySet());
  }
}
