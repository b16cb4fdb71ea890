package easewright.layout;

import java.util.ArrayList;
import java.util.List;

/**
 * Lays all parts in one order of priority; uses plain arrays, since it is the inner loop of the
 * search.
 */
final class Filling {
  private final List<LaidPart> parts;
  private final double[] width;
  private final double[] length;
  private final boolean[] turnable;
  private final boolean[] atEdge;
  private final Skyline skyline;
  private final int[] waiting;
  private int chosen;
  private boolean chosenTurned;

  Filling(double stripWidth, List<LaidPart> parts) {
    int n = parts.size();
    this.parts = parts;
    width = new double[n];
    length = new double[n];
    turnable = new boolean[n];
    atEdge = new boolean[n];
    waiting = new int[n];
    for (int i = 0; i < n; i++) {
      LaidPart part = parts.get(i);
      width[i] = part.width();
      length[i] = part.length();
      turnable[i] = part.turnable() && part.width() != part.length();
      atEdge[i] = part.atEdge();
    }
    skyline = new Skyline(stripWidth, n);
  }

  /** The length used with this order of priority. */
  double length(int[] order) {
    run(order, null);
    return skyline.highest();
  }

  List<Placed> placed(int[] order) {
    List<Placed> placed = new ArrayList<>();
    run(order, placed);
    return placed;
  }

  private void run(int[] order, List<Placed> into) {
    skyline.clear();
    System.arraycopy(order, 0, waiting, 0, order.length);
    int left = order.length;
    while (left > 0) {
      skyline.findLowest();
      choose(left);
      if (chosen < 0) {
        skyline.fill();
        continue;
      }
      int part = waiting[chosen];
      System.arraycopy(waiting, chosen + 1, waiting, chosen, --left - chosen);
      double across = chosenTurned ? length[part] : width[part];
      double y = skyline.floor();
      double x = skyline.lay(across, chosenTurned ? width[part] : length[part]);
      if (into != null) {
        into.add(new Placed(parts.get(part), x, y, chosenTurned));
      }
    }
  }

  /** The part that fills the hollow best; if equal, the first in the order. */
  private void choose(int left) {
    chosen = -1;
    int bestScore = -1;
    boolean edge = skyline.atLeftEdge();
    for (int i = 0; i < left && bestScore < 4; i++) {
      int part = waiting[i];
      if (atEdge[part] && !edge) {
        continue;
      }
      int upright = skyline.score(width[part], length[part]);
      int turned = turnable[part] ? skyline.score(length[part], width[part]) : -1;
      if (Math.max(upright, turned) > bestScore) {
        bestScore = Math.max(upright, turned);
        chosen = i;
        chosenTurned = turned > upright;
      }
    }
  }
}
