package easewright.cloth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

// Parallel springs share one extension and add their forces (elementary mechanics).
class LayersTest {

  private final Layers.Layer shell = new Layers.Layer("shell", new Estimate(0.8, 0.02), 1.5);
  private final Layers.Layer lining = new Layers.Layer("lining", new Estimate(0.5, 0.03), 0.5);
  private final Layers.Layer mesh = new Layers.Layer("mesh", new Estimate(0.3, 0.01), null);

  @Test
  void the_least_stretchy_layer_stops_the_others() {
    Layers layers = new Layers(List.of(shell, mesh, lining));
    assertEquals(mesh, layers.limiting());
    assertEquals(mesh.stretch(), layers.stretch());
  }

  @Test
  void tensions_of_layers_add() {
    assertEquals(0.4, new Layers(List.of(shell, lining)).tensionNPerCm(0.2).orElseThrow(), 1e-12);
  }

  @Test
  void one_unknown_tension_leaves_the_sum_unknown() {
    assertTrue(new Layers(List.of(shell, mesh)).tensionNPerCm(0.2).isEmpty());
  }

  @Test
  void an_extension_the_stiffest_layer_cannot_reach_is_refused() {
    Layers layers = new Layers(List.of(shell, lining));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> layers.tensionNPerCm(0.6))
            .getMessage()
            .contains("that far"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new Layers(List.of()))
            .getMessage()
            .contains("at least one"));
  }
}
