package easewright.number;

import easewright.rulebook.RuleBookSource;

/** Between which numbers a post can mean what it says: {@code parameters/reading.yaml}. */
public record ReadingBounds(RuleBookSource book) {

  /** A bound by its id: millimetres, a fraction, or in its own unit. */
  public double of(String id) {
    return book.parameter(id);
  }
}
