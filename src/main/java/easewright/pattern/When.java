package easewright.pattern;

import java.util.List;
import java.util.Map;

/**
 * The choices under which a piece or trim is needed: for every choice named, one of the options
 * named must be chosen. An empty map means always.
 *
 * @param options option ids by choice id
 */
public record When(Map<String, List<String>> options) {

  public When {
    options = Map.copyOf(options);
  }

  /** Whether it is needed, given option ids by choice id. */
  public boolean holds(Map<String, String> chosen) {
    for (Map.Entry<String, List<String>> needed : options.entrySet()) {
      String option = chosen.get(needed.getKey());
      if (needed.getValue().stream().noneMatch(one -> SheetChoice.taken(one, option))) {
        return false;
      }
    }
    return true;
  }
}
