package easewright.layout;

import easewright.deadline.Deadline;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Searches for a short layout: parts are laid one by one into the lowest hollow, in an order of
 * priority that simulated annealing improves. Effort is limited by a count, never by time, and the
 * random generator is seeded, so the same question always has the same answer.
 *
 * @param rounds maximum number of layouts tried
 * @param seed random seed
 */
public record Packing(int rounds, long seed) {
  /** Long enough for annealing to settle, short enough for several restarts. */
  private static final int ROUNDS_A_START = 10_000;

  private static final double WARM = 0.03;

  /** Good initial orders; the search uses them in turn. */
  private static final List<Comparator<LaidPart>> BEGINNINGS =
      List.of(
          Comparator.comparingDouble(LaidPart::area).reversed(),
          Comparator.comparingDouble(LaidPart::length).reversed(),
          Comparator.comparingDouble(LaidPart::width).reversed(),
          Comparator.comparing(LaidPart::atEdge).thenComparingDouble(LaidPart::length).reversed());

  /**
   * @throws IllegalArgumentException if no layout is to be tried
   */
  public Packing {
    if (rounds < 1) {
      throw new IllegalArgumentException("At least one layout has to be tried.");
    }
  }

  /**
   * Lays the parts; their order does not matter.
   *
   * @param width the strip's width
   * @return the shortest layout found
   * @throws IllegalArgumentException if a part is too wide for the strip
   */
  public Layout lay(double width, List<LaidPart> parts) {
    for (LaidPart part : parts) {
      if (part.narrowest() > width + Skyline.SAME) {
        throw new IllegalArgumentException("The part '" + part.id() + "' is too wide.");
      }
    }
    if (parts.isEmpty()) {
      return new Layout(width, List.of());
    }
    return new Search(width, ordered(parts)).best();
  }

  private static List<LaidPart> ordered(List<LaidPart> parts) {
    List<LaidPart> ordered = new ArrayList<>(parts);
    ordered.sort(
        BEGINNINGS
            .get(0)
            .thenComparing(LaidPart::id)
            .thenComparing(LaidPart::width)
            .thenComparing(LaidPart::atEdge)
            .thenComparing(LaidPart::turnable));
    return ordered;
  }

  /** A lower bound of the length: from the parts' area, and from each part by itself. */
  public static double shortest(double width, List<LaidPart> parts) {
    double area = parts.stream().mapToDouble(LaidPart::area).sum();
    double longest =
        parts.stream()
            .mapToDouble(
                part ->
                    part.turnable() && part.length() <= width + Skyline.SAME
                        ? Math.min(part.width(), part.length())
                        : part.length())
            .max()
            .orElse(0);
    return Math.max(area / width, longest);
  }

  private final class Search {
    private final double width;
    private final List<LaidPart> parts;
    private final double shortest;
    private final Filling filling;
    private final SplittableRandom chance = new SplittableRandom(seed);
    private int[] best;
    private double bestLength = Double.POSITIVE_INFINITY;

    Search(double width, List<LaidPart> parts) {
      this.width = width;
      this.parts = parts;
      this.shortest = shortest(width, parts);
      this.filling = new Filling(width, parts);
    }

    Layout best() {
      int left = rounds;
      for (int start = 0; left > 0 && !perfect(); start++) {
        left -= anneal(beginning(start), Math.min(left, ROUNDS_A_START));
      }
      return new Layout(width, filling.placed(best));
    }

    private boolean perfect() {
      return bestLength <= shortest + Skyline.SAME;
    }

    private int[] beginning(int start) {
      Comparator<LaidPart> by = BEGINNINGS.get(start % BEGINNINGS.size());
      return java.util.stream.IntStream.range(0, parts.size())
          .boxed()
          .sorted(Comparator.comparing(parts::get, by))
          .mapToInt(Integer::intValue)
          .toArray();
    }

    private int anneal(int[] order, int most) {
      double length = judged(order);
      for (int round = 1; round < most; round++) {
        if (perfect() || order.length < 2) {
          return round;
        }
        Deadline.check();
        int a = chance.nextInt(order.length);
        int b = chance.nextInt(order.length);
        swap(order, a, b);
        double now = judged(order);
        double warmth = WARM * shortest * (1 - (double) round / most);
        if (now <= length || chance.nextDouble() < Math.exp((length - now) / warmth)) {
          length = now;
        } else {
          swap(order, a, b);
        }
      }
      return most;
    }

    private double judged(int[] order) {
      double length = filling.length(order);
      if (length < bestLength - Skyline.SAME) {
        bestLength = length;
        best = order.clone();
      }
      return length;
    }

    private void swap(int[] order, int a, int b) {
      int kept = order[a];
      order[a] = order[b];
      order[b] = kept;
    }
  }
}
