package easewright.measure;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One measuring and how it was taken.
 *
 * @param method who measured by what
 * @param reading the reading, with what is known to be wrong with it taken off and its error
 * @param held how the tape was held or what lay under it, as far as was said
 */
public record Measuring(MeasuringMethod method, Measured reading, List<Measures.Held> held) {
  public Measuring {
    held = List.copyOf(held);
  }

  /** In short: "tape-self, over a padded bra". */
  public String text() {
    return Stream.concat(Stream.of(method.wireName()), held.stream().map(Measures.Held::says))
        .collect(Collectors.joining(", "));
  }
}
