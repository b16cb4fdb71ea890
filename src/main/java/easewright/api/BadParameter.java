package easewright.api;

import java.util.List;

/** A query parameter with a value that it does not take; the value is not repeated. */
final class BadParameter extends RuntimeException {
  private final String name;
  private final transient List<String> taken;

  BadParameter(String name, List<String> taken) {
    super(null, null, false, false);
    this.name = name;
    this.taken = List.copyOf(taken);
  }

  String name() {
    return name;
  }

  /** The values it takes. */
  List<String> taken() {
    return taken;
  }
}
