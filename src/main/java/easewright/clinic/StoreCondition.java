package easewright.clinic;

/**
 * State of the store, for the operator. It contains no row values, since it is logged.
 *
 * @param fault what is wrong and with which file or server, a sentence; null if in order
 * @param remedy what to do about it, a sentence or more; null if in order
 */
public record StoreCondition(String fault, String remedy) {
  public static final StoreCondition IN_ORDER = new StoreCondition(null, null);

  public boolean inOrder() {
    return fault == null;
  }
}
