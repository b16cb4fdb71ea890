package easewright.pattern;

import java.util.List;
import java.util.Map;

/**
 * The choices under which a piece or trim is needed: for every choice named, one of the options
 * named must be chosen. Naming none means always.
 *
 * @param options option ids by choice id
 */
public record When(Map<String, List<String>> options) {

  public When {
    options = Map.copyOf(options);
  }

  /** Whether it is needed, given option ids by choice id. */
  public boolean holds(Map<String, String> chosen) {
    return options.entrySet().stream()
        .allMatch(
            entry ->
                entry.getValue().stream()
                    .anyMatch(option -> Choice.taken(option, chosen.get(entry.getKey()))));
  }
}
