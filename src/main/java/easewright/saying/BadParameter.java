package easewright.saying;

import java.util.List;

/** A query parameter has a value that is not accepted; the value is not repeated. */
public final class BadParameter extends RuntimeException {
  private final String name;
  private final transient List<String> taken;

  /**
   * A parameter with a wrong value.
   *
   * @param taken values it accepts, or examples of them
   */
  public BadParameter(String name, List<String> taken) {
    super(null, null, false, false);
    this.name = name;
    this.taken = List.copyOf(taken);
  }

  /** The parameter's name. */
  public String name() {
    return name;
  }

  /** The values it accepts. */
  public List<String> taken() {
    return taken;
  }
}
