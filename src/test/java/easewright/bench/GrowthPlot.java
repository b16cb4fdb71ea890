package easewright.bench;

import io.quarkus.qute.Engine;
import io.quarkus.qute.ReflectionValueResolver;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Curves over small whole numbers, one panel each, as an SVG drawing. */
final class GrowthPlot {
  private static final int WIDTH = 320;
  private static final int HEIGHT = 120;
  private static final int STEP = HEIGHT + 70;

  private GrowthPlot() {}

  /** A point of a curve: where it lies in its panel, and what to write there. */
  public record Point(int x, int y, int at, String times) {}

  /** One curve in its panel, which begins so far down. */
  public record Panel(String name, int top, List<Point> points) {
    public String line() {
      return String.join(" ", points.stream().map(p -> p.x() + "," + p.y()).toList());
    }
  }

  static String of(Map<String, TreeMap<Integer, Double>> curves) throws IOException {
    List<Panel> panels = new ArrayList<>();
    curves.forEach((name, points) -> panels.add(panel(name, panels.size() * STEP, points)));
    try (InputStream template = GrowthPlot.class.getResourceAsStream("growth.svg")) {
      return Engine.builder()
          .addDefaults()
          .addValueResolver(new ReflectionValueResolver())
          .build()
          .parse(new String(template.readAllBytes(), StandardCharsets.UTF_8))
          .data("panels", panels)
          .data("height", panels.size() * STEP)
          .render();
    }
  }

  private static Panel panel(String name, int top, TreeMap<Integer, Double> points) {
    double first = points.firstEntry().getValue();
    double most =
        Math.max(1.5, points.values().stream().mapToDouble(v -> v / first).max().orElse(1));
    List<Point> placed = new ArrayList<>();
    points.forEach(
        (at, micros) ->
            placed.add(
                new Point(
                    WIDTH * at / points.lastKey(),
                    (int) Math.round(HEIGHT * (1 - micros / first / most)),
                    at,
                    "%.2f".formatted(micros / first))));
    return new Panel(name, top, placed);
  }
}
