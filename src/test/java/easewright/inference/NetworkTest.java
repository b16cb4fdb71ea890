package easewright.inference;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class NetworkTest {

  /** Jaakkola and Jordan 1999, JAIR 10: P(f = 1) = 1 − (1 − leak)·∏(1 − q); worked by hand. */
  @Test
  void a_sign_is_absent_only_if_the_leak_and_every_cause_fail_to_show_it() {
    Network network =
        Network.builder()
            .cause("a", 0.1)
            .cause("b", 0.1)
            .cause("c", 0.1)
            .sign("s", 0.1)
            .link("a", "s", 0.8)
            .link("b", "s", 0.5)
            .build();
    assertEquals(0.1, network.probability("s", List.of()), 1e-15);
    assertEquals(1 - 0.9 * 0.2, network.probability("s", List.of("a")), 1e-15);
    assertEquals(1 - 0.9 * 0.2 * 0.5, network.probability("s", List.of("a", "b")), 1e-15);
    assertEquals(0.1, network.probability("s", List.of("c")), 1e-15);
  }

  @Property(tries = 300)
  void replaced_links_give_the_network_built_with_them_from_the_start(@ForAll long seed) {
    var small = new RandomNetworks(seed, 6, 6);
    Network before = small.network();
    var observations = small.observations();
    double[] untouched = Posterior.infer(before, observations).marginals().clone();

    var replaced = new ArrayList<Link>();
    for (int k = 0; k < small.links.size(); k += 2) {
      Link link = small.links.get(k);
      replaced.add(new Link(link.cause(), link.sign(), link.strength() / 3));
      small.links.set(k, replaced.get(replaced.size() - 1));
    }
    // Small networks here always have a first cause and sign; add the link if there was none.
    if (small.links.stream().noneMatch(l -> l.cause().equals("c0") && l.sign().equals("s0"))) {
      small.links.add(new Link("c0", "s0", 0.4));
      replaced.add(new Link("c0", "s0", 0.4));
    }

    assertEquals(
        all(Posterior.infer(small.network(), observations)),
        all(Posterior.infer(before.with(replaced), observations)));
    assertArrayEquals(untouched, Posterior.infer(before, observations).marginals());
  }

  @Property(tries = 300)
  void the_order_of_declaration_changes_not_a_bit(@ForAll long seed) {
    var small = new RandomNetworks(seed, 6, 6);
    var observations = small.observations();
    var expected = all(Posterior.infer(small.network(), observations));
    var builder = Network.builder();
    var causes = new ArrayList<>(small.priors.entrySet());
    var signs = new ArrayList<>(small.leaks.entrySet());
    Collections.reverse(causes);
    Collections.reverse(signs);
    Collections.reverse(small.links);
    small.links.forEach(l -> builder.link(l.cause(), l.sign(), l.strength()));
    signs.forEach(s -> builder.sign(s.getKey(), s.getValue()));
    causes.forEach(c -> builder.cause(c.getKey(), c.getValue()));
    assertEquals(expected, all(Posterior.infer(builder.build(), observations)));
  }

  @Test
  void what_cannot_be_a_probability_is_refused() {
    var builder = Network.builder().cause("a", 0.1).sign("s", 0.1);
    refused(() -> builder.cause("b", 0));
    refused(() -> builder.cause("b", 1));
    refused(() -> builder.cause("b", Double.NaN));
    refused(() -> builder.sign("t", 1));
    refused(() -> builder.sign("t", -0.1));
    refused(() -> builder.link("a", "s", 1.1));
    refused(() -> new Observation("s", true, 0.5));
    refused(() -> new Observation("s", true, 1.01));
    refused(() -> new Observation("s", true, Double.NaN));
  }

  @Test
  void what_is_given_twice_or_unknown_is_refused() {
    refused(() -> Network.builder().cause("a", 0.1).cause("a", 0.2));
    refused(() -> Network.builder().sign("s", 0.1).sign("s", 0.1));
    refused(() -> Network.builder().link("a", "s", 0.1).link("a", "s", 0.2));
    refused(() -> Network.builder().build());
    refused(() -> Network.builder().cause("a", 0.1).link("a", "s", 0.5).build());
    refused(() -> Network.builder().sign("s", 0.1).cause("b", 0.1).link("a", "s", 0.5).build());

    Network network = Network.builder().cause("a", 0.1).sign("s", 0.1).build();
    refused(() -> network.with(List.of(new Link("a", "t", 0.5))));
    refused(() -> network.with(List.of(new Link("a", "s", 0.5), new Link("a", "s", 0.6))));
    var twice = List.of(new Observation("s", true, 1), new Observation("s", true, 1));
    refused(() -> Posterior.infer(network, twice));
    refused(() -> Posterior.infer(network, List.of(new Observation("t", true, 1))));
  }

  @Test
  void a_rare_cause_more_changes_no_other_by_more_than_its_share() {
    Network before = network(builder -> builder);
    Network after = network(builder -> builder.cause("rare", 0.002).sign("its own", 0.001));
    List<Observation> seen = List.of(new Observation("sign", true, 1));
    assertEquals(0.25, Posterior.infer(before, List.of()).nothing(), 1e-12);
    assertEquals(0.25, Posterior.infer(after, List.of()).nothing(), 1e-12);
    for (String cause : List.of("common", "uncommon")) {
      assertEquals(
          Posterior.infer(before, seen).probability(cause),
          Posterior.infer(after, seen).probability(cause),
          0.002,
          cause);
    }
  }

  private static Network network(UnaryOperator<NetworkBuilder> more) {
    NetworkBuilder builder =
        Network.builder()
            .nothingWrong(0.25)
            .cause("common", 0.05)
            .cause("uncommon", 0.01)
            .sign("sign", 0.05)
            .link("common", "sign", 0.9)
            .link("uncommon", "sign", 0.5);
    for (int other = 0; other < 40; other++) {
      builder.cause("other " + other, 0.03);
    }
    return more.apply(builder).build();
  }

  private static void refused(Executable step) {
    assertThrows(IllegalArgumentException.class, step);
  }

  private static List<Hypothesis> all(Posterior posterior) {
    return posterior.hypotheses(Integer.MAX_VALUE);
  }
}
