package easewright.layout;

import java.util.Arrays;

/**
 * The upper outline of the parts laid so far, as level segments from left to right. Parts go into
 * its lowest hollow, as in Burke, Kendall and Whitwell 2004 (Operations Research 52:655); the
 * choice of part follows the scoring idea of Leung, Zhang and Sim 2011 (European Journal of
 * Operational Research 215:57), both from memory.
 */
final class Skyline {
  /** Lengths closer than this count as equal; far below the precision of any tape or cutter. */
  static final double SAME = 1e-6;

  private final double width;
  private final double[] left;
  private final double[] level;
  private int segments;
  private int lowest;

  Skyline(double width, int parts) {
    this.width = width;
    this.left = new double[parts + 2];
    this.level = new double[parts + 2];
    clear();
  }

  void clear() {
    segments = 1;
    left[0] = 0;
    level[0] = 0;
    lowest = 0;
  }

  /** Finds the lowest segment, the leftmost if there are several. */
  void findLowest() {
    lowest = 0;
    for (int i = 1; i < segments; i++) {
      if (level[i] < level[lowest] - SAME) {
        lowest = i;
      }
    }
  }

  boolean atLeftEdge() {
    return lowest == 0;
  }

  double floor() {
    return level[lowest];
  }

  double gap() {
    return right(lowest) - left[lowest];
  }

  private double right(int i) {
    return i + 1 < segments ? left[i + 1] : width;
  }

  private double leftWall() {
    return lowest == 0 ? Double.POSITIVE_INFINITY : level[lowest - 1] - level[lowest];
  }

  private double rightWall() {
    return lowest + 1 == segments ? Double.POSITIVE_INFINITY : level[lowest + 1] - level[lowest];
  }

  /** How well a rectangle fills the lowest hollow; negative if it is too wide. */
  int score(double partWidth, double partLength) {
    double gap = gap();
    if (partWidth > gap + SAME) {
      return -1;
    }
    double tall = Math.max(leftWall(), rightWall());
    double low = Math.min(leftWall(), rightWall());
    boolean fills = Math.abs(partWidth - gap) <= SAME;
    boolean meetsTall = Math.abs(partLength - tall) <= SAME;
    boolean meetsLow = Math.abs(partLength - low) <= SAME;
    if (fills) {
      return meetsTall ? 4 : meetsLow ? 4 : 2;
    }
    return meetsTall ? 1 : 0;
  }

  /** Lays a rectangle in the lowest hollow, against its taller wall; returns its left side. */
  double lay(double partWidth, double partLength) {
    double top = level[lowest] + partLength;
    double rest = gap() - partWidth;
    double x;
    if (rest <= SAME) {
      x = left[lowest];
      level[lowest] = top;
      join();
    } else if (leftWall() >= rightWall()) {
      x = left[lowest];
      insert(lowest, x, top);
      left[lowest + 1] = x + partWidth;
      join();
    } else {
      x = right(lowest) - partWidth;
      insert(lowest + 1, x, top);
      lowest++;
      join();
    }
    return x;
  }

  /** Abandons the lowest hollow: fills it up to its lower wall. */
  void fill() {
    level[lowest] += Math.min(leftWall(), rightWall());
    join();
  }

  private void insert(int at, double x, double y) {
    System.arraycopy(left, at, left, at + 1, segments - at);
    System.arraycopy(level, at, level, at + 1, segments - at);
    left[at] = x;
    level[at] = y;
    segments++;
  }

  private void join() {
    if (lowest + 1 < segments && Math.abs(level[lowest + 1] - level[lowest]) <= SAME) {
      remove(lowest + 1);
    }
    if (lowest > 0 && Math.abs(level[lowest - 1] - level[lowest]) <= SAME) {
      remove(lowest);
      lowest--;
    }
  }

  private void remove(int at) {
    System.arraycopy(left, at + 1, left, at, segments - at - 1);
    System.arraycopy(level, at + 1, level, at, segments - at - 1);
    segments--;
  }

  double highest() {
    return Arrays.stream(level, 0, segments).max().orElse(0);
  }
}
