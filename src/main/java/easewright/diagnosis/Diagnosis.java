package easewright.diagnosis;

import easewright.fitting.Fitting;
import easewright.pattern.PatternSheet;
import easewright.rulebook.RuleBook;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/** Answers a fitting. Immutable and safe to share between threads. */
public final class Diagnosis {
  private final Map<String, FamilyDiagnosis> families = new HashMap<>();

  /**
   * @param book the book of the usual family, which knows those of the others
   * @param shipped the pattern sheets that come with the application
   */
  public Diagnosis(RuleBook book, Collection<PatternSheet> shipped) {
    Sizing sizing = new Sizing(shipped, book.source());
    book.families()
        .forEach((family, one) -> families.put(family, new FamilyDiagnosis(one, sizing)));
  }

  /** Judges, weighs, infers, works out amounts and ranks. */
  public Answer answer(Fitting fitting) {
    return answer(fitting, WordsLeft.NONE, false);
  }

  /**
   * The same for a fitting told in words.
   *
   * @param left what of the words was not judged
   * @param lean whether to leave empty what neither lean JSON nor its reply tells: cloth, findings,
   *     what is missing, and the size in other systems
   */
  public Answer answer(Fitting fitting, WordsLeft left, boolean lean) {
    return of(fitting).answer(fitting, left, lean);
  }

  /** How probable each cause is, 0 to 1, also those too improbable for an answer to name. */
  public Map<String, Double> causes(Fitting fitting) {
    return of(fitting).causes(fitting);
  }

  /** How probable each cause is while nothing is known, in a family of garments. */
  public Map<String, Double> causesBefore(String family) {
    return families.get(family).causesBefore();
  }

  private FamilyDiagnosis of(Fitting fitting) {
    return families.get(fitting.family());
  }
}
