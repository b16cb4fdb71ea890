package easewright.diagnosis;

import easewright.pattern.PatternSheet;
import easewright.rulebook.RuleBook;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/** Answers a fitting. Immutable and safe to share between threads. */
public final class Diagnosis {
  private final Map<String, FamilyDiagnosis> families = new HashMap<>();
  private final FamilyDiagnosis usual;

  /**
   * @param book judges where the pattern is of no kind that has rules of its own
   * @param shipped the pattern sheets that come with the application
   */
  public Diagnosis(RuleBook book, Collection<PatternSheet> shipped) {
    Sizing sizing =
        new Sizing(shipped, book.source().wording(), book.source().parameter("size-neighbour"));
    this.usual = new FamilyDiagnosis(book, sizing);
    book.families()
        .forEach(
            (family, one) ->
                families.put(family, one == book ? usual : new FamilyDiagnosis(one, sizing)));
  }

  /** Judges, weighs, infers, works out amounts and ranks. */
  public Answer answer(Fitting fitting) {
    return answer(fitting, false);
  }

  /**
   * The same for a fitting told in words.
   *
   * @param doubtful whether some of the words may tell of a danger and only a person can judge, so
   *     that nothing tighter is advised
   */
  public Answer answer(Fitting fitting, boolean doubtful) {
    String family = fitting.sheet() == null ? null : fitting.sheet().family();
    return families.getOrDefault(family, usual).answer(fitting, doubtful);
  }
}
