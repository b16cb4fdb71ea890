package easewright.rulebook.check;

import easewright.rulebook.RuleBookSource;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Words that a rule book may use without defining them, because the code or a pattern sheet does.
 *
 * @param circumstances what requests can say of the wearing, such as "nursing"
 * @param figures ids of derived numbers, such as "band-strain"
 * @param measurements wire names of the measurements a text may hold
 * @param choices choice to its options, of the shipped pattern sheets
 * @param parameters ids of the parameters the computing itself needs
 * @param sentences keys of the sentences of {@code wording.yaml} the code says
 * @param cues names of the cues the reader of posts acts on
 * @param readerLists names of the lists of small words the reader of posts goes by
 */
public record KnownWords(
    Set<String> circumstances,
    Set<String> figures,
    Set<String> measurements,
    Map<String, List<String>> choices,
    Set<String> parameters,
    Set<String> sentences,
    Set<String> cues,
    Set<String> readerLists) {

  /** The outcomes of a change tried earlier. */
  public static final List<String> OUTCOMES = List.of("better", "same", "worse");

  /**
   * What the computing needs of any book, told from the one compiled with it: every parameter that
   * book has and no rule or adjustment of it names, every sentence, every cue.
   *
   * @param shared parameters that both rules and the computing name
   */
  public static KnownWords of(
      RuleBookSource compiledIn,
      Set<String> circumstances,
      Set<String> figures,
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
        choices,
        own,
        compiledIn.wording().sentences().keySet(),
        compiledIn.everyday().cues().keySet(),
        compiledIn.everyday().reader().keySet());
  }
}
