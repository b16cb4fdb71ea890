package easewright.fitting;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** Copies that keep the order of reporting, so that an answer does not depend on hashing. */
final class InOrder {
  private InOrder() {}

  static <V> Map<String, V> copy(Map<String, V> map) {
    return Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }
}
