package easewright.request;

import easewright.rulebook.RuleBookSource;

/**
 * What a rule book says about requests: the sentences for faults about the trade, and the limits of
 * lengths.
 */
record RequestWords(RuleBookSource book) {

  /**
   * A sentence of {@code wording.yaml}.
   *
   * @param blanks name and value of each blank, in turn
   */
  String say(String key, Object... blanks) {
    return book.wording().say(key, blanks);
  }

  /** A bound of {@code parameters/requests.yaml}: millimetres, a fraction, or in its own unit. */
  double bound(String id) {
    return book.parameter(id);
  }
}
