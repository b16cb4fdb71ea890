package easewright.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.reading.LengthSaid.Counts;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Rows made by hand: the columns are those that {@code src/training/reader/lengths.py} writes. */
class LengthSaidTest {
  private static final List<String> CHANGES = List.of("band", "straps");

  private static LengthSaid said(float... row) {
    assertEquals(LengthSaid.columns(CHANGES.size()), row.length);
    return new LengthSaid(new TextPlace(3, 7), CHANGES, row);
  }

  @Test
  void a_length_counts_as_is_likeliest_and_gives_the_amount_of_any_change_but_nothing() {
    LengthSaid fold = said(0.1f, 0.2f, 0.7f, 0.1f, 0.2f, 0.6f, 0.02f, 0.03f, 0.03f, 0.02f);
    assertEquals(0.7, fold.of("straps"), 1e-6);
    assertEquals(0, fold.of("cups"));
    assertEquals(0.9, fold.ofAny(), 1e-6);
    assertEquals(Counts.QUARTER, fold.counts());
    assertFalse(fold.counts().isOfTwo());
  }

  @Test
  void of_two_lengths_the_amount_is_what_lies_between_or_half_of_it() {
    assertTrue(said(0, 1, 0, 0, 0, 0, 0, 1, 0, 0).counts().isOfTwo());
    assertEquals(Counts.TWICE_PAIR, said(0, 1, 0, 0, 0, 0, 0, 0, 1, 0).counts());
    assertTrue(Counts.TWICE_PAIR.isOfTwo());
  }
}
