package easewright.inference;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Small networks and observations drawn from a seed, with the same content as plain maps. */
final class RandomNetworks {
  final Map<String, Double> priors = new LinkedHashMap<>();
  final Map<String, Double> leaks = new LinkedHashMap<>();
  final List<Link> links = new ArrayList<>();
  private final Random random;

  RandomNetworks(long seed, int mostCauses, int mostSigns) {
    random = new Random(seed);
    int causes = 1 + random.nextInt(mostCauses);
    int signs = 1 + random.nextInt(mostSigns);
    for (int c = 0; c < causes; c++) {
      priors.put("c" + c, 0.002 + 0.3 * random.nextDouble());
    }
    for (int s = 0; s < signs; s++) {
      leaks.put("s" + s, 0.001 + 0.2 * random.nextDouble());
      for (int c = 0; c < causes; c++) {
        if (random.nextBoolean()) {
          links.add(new Link("c" + c, "s" + s, random.nextDouble()));
        }
      }
    }
  }

  Network network() {
    var builder = Network.builder();
    priors.forEach(builder::cause);
    leaks.forEach(builder::sign);
    links.forEach(link -> builder.link(link.cause(), link.sign(), link.strength()));
    return builder.build();
  }

  PlainEvaluator plain(int mostAtOnce) {
    return new PlainEvaluator(priors, leaks, links, mostAtOnce);
  }

  /** About half of the signs, a third of them with full trust. */
  List<Observation> observations() {
    var observations = new ArrayList<Observation>();
    for (String sign : leaks.keySet()) {
      if (random.nextBoolean()) {
        double trust = random.nextInt(3) == 0 ? 1 : 0.55 + 0.45 * random.nextDouble();
        observations.add(new Observation(sign, random.nextBoolean(), trust));
      }
    }
    return observations;
  }

  List<String> unknown(List<Observation> observations) {
    var unknown = new ArrayList<>(leaks.keySet());
    observations.forEach(o -> unknown.remove(o.sign()));
    return unknown;
  }
}
