package easewright.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.List;

/** Properties of every layout. */
public final class LayoutChecks {
  private static final double NEAR = 1e-6;
  private static final Comparator<LaidPart> ANY_ORDER =
      Comparator.comparing(LaidPart::id)
          .thenComparing(LaidPart::width)
          .thenComparing(LaidPart::length)
          .thenComparing(LaidPart::atEdge)
          .thenComparing(LaidPart::turnable);

  private LayoutChecks() {}

  public static void assertSound(Layout layout, List<LaidPart> parts) {
    assertEquals(
        parts.stream().sorted(ANY_ORDER).toList(),
        layout.placed().stream().map(Placed::part).sorted(ANY_ORDER).toList(),
        "every part is laid once");
    for (Placed one : layout.placed()) {
      assertTrue(one.x() >= -NEAR && one.y() >= -NEAR, () -> one + " lies outside");
      assertTrue(one.x() + one.width() <= layout.width() + NEAR, () -> one + " is cut off");
      assertTrue(!one.turned() || one.part().turnable(), () -> one + " was turned");
      assertTrue(!one.part().atEdge() || one.x() == 0, () -> one + " is off the edge");
      for (Placed other : layout.placed()) {
        assertTrue(one == other || !overlap(one, other), () -> one + " lies on " + other);
      }
    }
    assertTrue(
        layout.length() >= Packing.shortest(layout.width(), parts) - NEAR,
        "no layout beats the bound");
  }

  private static boolean overlap(Placed a, Placed b) {
    return Math.min(a.x() + a.width(), b.x() + b.width()) - Math.max(a.x(), b.x()) > NEAR
        && Math.min(a.y() + a.length(), b.y() + b.length()) - Math.max(a.y(), b.y()) > NEAR;
  }
}
