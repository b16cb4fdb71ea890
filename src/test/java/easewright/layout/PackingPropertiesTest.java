package easewright.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class PackingPropertiesTest {
  private static final double WIDTH = 700;
  private static final Packing PACKING = new Packing(300, 7);

  @Provide
  Arbitrary<List<LaidPart>> cloth() {
    Arbitrary<Double> side = Arbitraries.doubles().between(5, WIDTH).ofScale(1);
    return Combinators.combine(
            Arbitraries.of("front", "back", "strap", "band"),
            side,
            side,
            Arbitraries.of("free", "turnable", "edge"))
        .as((id, a, b, how) -> new LaidPart(id, a, b, how.equals("turnable"), how.equals("edge")))
        .list()
        .ofMaxSize(14);
  }

  @Property(tries = 300)
  void nothing_overlaps_nothing_is_left_out_and_fold_parts_touch_the_fold(
      @ForAll("cloth") List<LaidPart> parts) {
    LayoutChecks.assertSound(PACKING.lay(WIDTH, parts), parts);
  }

  @Property(tries = 100)
  void the_order_parts_are_given_in_does_not_matter(
      @ForAll("cloth") List<LaidPart> parts, @ForAll long shuffle) {
    List<LaidPart> shuffled = new ArrayList<>(parts);
    Collections.shuffle(shuffled, new Random(shuffle));
    assertEquals(PACKING.lay(WIDTH, parts), PACKING.lay(WIDTH, shuffled));
  }

  @Property(tries = 100)
  void more_effort_never_gives_a_longer_layout_within_one_start(
      @ForAll("cloth") List<LaidPart> parts) {
    double first = new Packing(1, 7).lay(WIDTH, parts).length();
    assertTrue(PACKING.lay(WIDTH, parts).length() <= first + 1e-6);
  }

  @Example
  void a_part_wider_than_the_strip_is_refused() {
    List<LaidPart> wide = List.of(new LaidPart("wide", WIDTH + 1, 10, false, false));
    assertThrows(IllegalArgumentException.class, () -> PACKING.lay(WIDTH, wide));
  }

  @Example
  void a_part_wider_than_the_strip_lies_turned_where_it_may() {
    List<LaidPart> long_ = List.of(new LaidPart("long", WIDTH + 1, 10, true, false));
    Layout layout = PACKING.lay(WIDTH, long_);
    assertTrue(layout.placed().get(0).turned());
    assertEquals(WIDTH + 1, layout.length());
  }

  @Example
  void nothing_to_lay_uses_nothing() {
    Layout layout = PACKING.lay(WIDTH, List.of());
    assertEquals(0, layout.length());
    assertEquals(0, layout.use());
  }
}
