package easewright.diagnosis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.sessions.JqwikSession;

/** Random legal fittings for tests that need the whole service. */
public final class RandomFittings {
  private RandomFittings() {}

  /** So many, always the same. */
  public static List<ObjectNode> some(int count) {
    List<ObjectNode> some = new ArrayList<>();
    JqwikSession.run(
        () ->
            FittingArbitrary.any().generator(1000).stream(new Random(5))
                .limit(count)
                .forEach(one -> some.add(one.value())));
    return some;
  }
}
