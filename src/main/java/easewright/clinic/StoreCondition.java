package easewright.clinic;

/**
 * Whether the store does what it is asked, told for whoever runs the service. No value of a row is
 * in it, for it is logged.
 *
 * @param fault what is wrong and with which file or server, a sentence; null when in order
 * @param remedy what to do about it, a sentence or more; null when in order
 */
public record StoreCondition(String fault, String remedy) {
  public static final StoreCondition IN_ORDER = new StoreCondition(null, null);

  public boolean inOrder() {
    return fault == null;
  }
}
