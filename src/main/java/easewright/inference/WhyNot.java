package easewright.inference;

import java.util.Collection;
import java.util.List;
import java.util.function.BiFunction;

/**
 * Why a cause is not the most probable one, and the smallest changes that would make it so.
 *
 * @param cause id of the cause asked about
 * @param first id of the most probable cause
 * @param oddsGap odds of the first cause divided by odds of the cause asked about; above 1
 * @param answers smallest sets of answers about unknown signs that would put the cause first
 * @param reports smallest sets of observed reports whose removal or reversal would put it first
 */
public record WhyNot(
    String cause, String first, double oddsGap, List<Turn> answers, List<Turn> reports) {

  /** What happens to one sign: a new answer, or a report taken back or turned round. */
  public enum Kind {
    PRESENT,
    ABSENT,
    REMOVED,
    REVERSED
  }

  /**
   * One change to what is known.
   *
   * @param sign id of the sign
   * @param kind what happens to it
   */
  public record Change(String sign, Kind kind) {}

  /**
   * Changes that together put the cause first.
   *
   * @param changes one change, or two where no single one does
   * @param probability of the cause afterwards, 0 to 1
   */
  public record Turn(List<Change> changes, double probability) {}

  /**
   * Looks for single changes, and where none suffices for pairs of those that speak most for the
   * cause against the first. Only signs linked to either of the two are tried.
   *
   * @param askable ids of unknown signs that could be asked about
   * @param as the observation that a sign, reported present or not, would count as
   * @param atMost how many turns to return of each kind, those that make the cause most probable
   * @throws IllegalArgumentException if the cause is the first
   */
  public static WhyNot explain(
      Posterior posterior,
      String cause,
      Collection<String> askable,
      BiFunction<String, Boolean, Observation> as,
      int atMost) {
    String first = posterior.first();
    if (first.equals(cause)) {
      throw new IllegalArgumentException("%s is the most probable cause.".formatted(cause));
    }
    var search = new TurnSearch(posterior, cause, first, atMost);
    return new WhyNot(
        cause,
        first,
        odds(posterior.probability(first)) / odds(posterior.probability(cause)),
        search.turns(search.answers(askable, as)),
        search.turns(search.reports(as)));
  }

  private static double odds(double probability) {
    return probability / (1 - probability);
  }
}
